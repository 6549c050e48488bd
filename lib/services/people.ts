import * as z from 'zod'
import { NewPassword, NewPerson, PersonChange } from '#lib/schema/people'
import { NewToken, TokenRef } from '#lib/schema/tokens'
import {
  addPerson as insertPerson,
  listPeople as readPeople,
  changePerson as updatePerson,
  setPassword as writePassword,
} from '#lib/store/people'
import { makeToken as insertToken, listTokens as readTokens, endToken as shutToken } from '#lib/store/tokens'
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

const nameTaken = {
  field: 'name',
  says: 'A living token has this name: end that one first, or name this one otherwise',
}

export const listTokens = verb('tokens.list', leads, z.object({}), () => readTokens())
/** Answers the token as it was sent: it is shown this once. */
export const makeToken = verb('tokens.make', leads, NewToken, async (actor, input) => {
  await told(insertToken(actor, input), { api_token_name_key: nameTaken })
  const { token, name, role } = input
  return { token, name, role }
})
export const endToken = verb('tokens.end', leads, TokenRef, (actor, { id }) => shutToken(actor, id))
