import * as z from 'zod'
import { NewPassword, NewPerson, PersonChange } from '#lib/schema/people'
import {
  addPerson as insertPerson,
  listPeople as readPeople,
  changePerson as updatePerson,
  setPassword as writePassword,
} from '#lib/store/people'
import { told } from './shop'
import { leads, verb } from './verb'

const emailTaken = { field: 'email', says: 'Somebody has this e-mail address already' }

export const listPeople = verb('people.list', leads, z.object({}), () => readPeople())
export const addPerson = verb('people.add', leads, NewPerson, (actor, input) =>
  told(insertPerson(actor, input), { person_email_key: emailTaken, person_email_lower_key: emailTaken }),
)
export const changePerson = verb('people.change', leads, PersonChange, (actor, input) =>
  updatePerson(actor, input),
)
export const setPassword = verb('people.password', leads, NewPassword, (actor, input) =>
  writePassword(actor, input),
)
