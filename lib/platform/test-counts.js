// @ts-check
/**
 * @typedef {{ passed: number, failed: number, skipped: number, failures: readonly string[] }} Counts
 * @typedef {{ testResults?: { name: string, status: string, message?: string, assertionResults: { status: string, fullName: string }[] }[] }} Report
 *   the test runner's JSON report
 */

/** @type {Counts} */
export const nothing = { passed: 0, failed: 0, skipped: 0, failures: [] }

/** @param {string} what @returns {Counts} */
export const oneFailed = (what) => ({ passed: 0, failed: 1, skipped: 0, failures: [what] })

/** @type {Counts} */
export const onePassed = { passed: 1, failed: 0, skipped: 0, failures: [] }

/** @param {Counts} left @param {Counts} right @returns {Counts} */
export function add(left, right) {
  return {
    passed: left.passed + right.passed,
    failed: left.failed + right.failed,
    skipped: left.skipped + right.skipped,
    failures: [...left.failures, ...right.failures],
  }
}

/**
 * Counts one run. A file that broke before its tests could run is one failure, and so is a run that failed or ran
 * nothing without saying which test: neither may pass for success.
 * @param {string} kind
 * @param {Report | null} report null when the runner left none
 * @param {number} exitCode
 * @param {string} root the files are named from here
 * @returns {Counts}
 */
export function countsOf(kind, report, exitCode, root) {
  const files = (report?.testResults ?? []).map((file) => ({
    ...file,
    name: file.name.replace(`${root}/`, ''),
  }))
  const each = files.flatMap(({ name, assertionResults }) =>
    assertionResults.map(({ status, fullName }) => ({ status, name: `${kind}: ${name} > ${fullName}` })),
  )
  /** @param {string} wanted */
  const named = (wanted) => each.filter(({ status }) => status === wanted).map(({ name }) => name)
  const broken = files
    .filter(
      ({ status, assertionResults }) =>
        status === 'failed' && !assertionResults.some((one) => one.status === 'failed'),
    )
    .map(({ name }) => `${kind}: ${name} (the file itself)`)
  const [passed, failed] = [named('passed').length, [...named('failed'), ...broken]]
  const silent = failed.length === 0 && (exitCode !== 0 || passed === 0)
  const failures = silent ? [`${kind}: ${passed === 0 ? 'no test ran' : `exit code ${exitCode}`}`] : failed
  return { passed, failed: failures.length, skipped: each.length - passed - named('failed').length, failures }
}

/** The line that a build machine reads. @param {Counts} counts */
export function verdict({ passed, failed }) {
  return `${passed} passed, ${failed} failed`
}
