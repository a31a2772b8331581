import chromiumPackage from '@sparticuz/chromium'
import { type Browser, chromium } from 'playwright-core'
import { memory } from './memory.ts'

// An emulated graphics card makes a page cost nearly twice as much.
chromiumPackage.setGraphicsMode = false

// One process for everything dies with its first page, and without web security no policy is kept.
const unwanted = ['--single-process', '--no-zygote', '--disable-web-security']

/** Names that nobody has lead to this computer, so that a page can be opened by one. */
const namesHere = '--host-resolver-rules=MAP *.example 127.0.0.1'

/** Not every browser keeps pages from asking this computer, so that no test may lean on it. */
const withoutGuard = (arg: string) =>
  arg.replace(/^--disable-features=/, '$&LocalNetworkAccessChecks,')

/** What the driver adds for where there is little shared memory: on a disk, it is a sixth of the browser's work. */
const slow = memory === undefined ? [] : ['--disable-dev-shm-usage']

/**
 * Starts the browser that comes with the packages.
 *
 * @throws Error with one sentence that says what is missing.
 */
export async function launched(): Promise<Browser> {
  const usual = chromiumPackage.args.filter((arg) => !unwanted.includes(arg)).map(withoutGuard)
  const args = [...usual, namesHere]
  try {
    const executablePath = await chromiumPackage.executablePath()
    return await chromium.launch({ executablePath, args, ignoreDefaultArgs: slow, headless: true })
  } catch (error) {
    const library = /loading shared libraries: (\S+):/.exec(String(error))?.[1]
    const missing = library ? `the system lacks ${library}` : String(error).split('\n')[0]
    throw new Error(
      `The browser for these tests cannot start: ${missing}. On Debian: apt-get install -y libnss3`,
    )
  }
}
