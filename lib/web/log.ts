/** One JSON line for each event that a person running the shop may want to see later. */
export function logEvent(
  level: 'info' | 'error',
  event: string,
  detail: Readonly<Record<string, unknown>> = {},
): void {
  const line = JSON.stringify({ at: new Date().toISOString(), level, event, ...detail })
  if (level === 'error') console.error(line)
  else console.log(line)
}
