import { figure, moment, shopTable, text } from './define'

export const peopleTable = shopTable('people', {
  title: 'People',
  about: 'One row per person with an account, leavers included. No passwords.',
  forLead: true,
  columns: [
    text('name', 'Name'),
    text('initials', 'Initials'),
    text('role', 'Role'),
    text('email', 'E-mail'),
    moment('createdAt', 'Added'),
    moment('endedAt', 'Access ended'),
    text('id', 'Id'),
  ],
})

export const tokensTable = shopTable('tokens', {
  title: 'Tokens',
  about: 'One row per token for scripts: its name and role. The token itself is nowhere.',
  forLead: true,
  columns: [
    text('name', 'Name'),
    text('role', 'Role'),
    text('createdByName', 'Made by'),
    moment('createdAt', 'Made'),
    moment('lastUsedAt', 'Last used'),
    moment('endedAt', 'Ended'),
  ],
})

export const auditTable = shopTable('audit', {
  title: 'Audit',
  about: 'One row per write: who, when, what it was before and after.',
  forLead: true,
  columns: [
    figure('no', 'No.'),
    moment('at', 'When'),
    text('byName', 'Who'),
    text('act', 'Act'),
    text('recordKind', 'Record'),
    text('recordId', 'Record id'),
    text('before', 'Before'),
    text('after', 'After'),
  ],
})
