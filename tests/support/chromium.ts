import chromiumPackage from '@sparticuz/chromium'
import { type Browser, type BrowserServer, chromium, type LaunchOptions } from 'playwright-core'

// An emulated graphics card makes a page cost nearly twice as much.
chromiumPackage.setGraphicsMode = false

// One process for everything dies with its first page, and without web security no policy is kept.
const unwanted = ['--single-process', '--no-zygote', '--disable-web-security']

/** Names that nobody has lead to this computer, so that a page can be opened by one. */
const namesHere = '--host-resolver-rules=MAP *.example 127.0.0.1'

/** Not every browser keeps pages from asking this computer, so that no test may lean on it. */
const withoutGuard = (arg: string) =>
  arg.replace(/^--disable-features=/, '$&LocalNetworkAccessChecks,')

/**
 * Starts the browser that comes with the packages.
 *
 * @throws Error with one sentence that says what is missing.
 */
export function launched(): Promise<Browser> {
  return started((options) => chromium.launch(options))
}

/** The same for other processes, which connect to it. */
export function launchedServer(): Promise<BrowserServer> {
  return started((options) => chromium.launchServer(options))
}

async function started<T>(start: (options: LaunchOptions) => Promise<T>): Promise<T> {
  const usual = chromiumPackage.args.filter((arg) => !unwanted.includes(arg)).map(withoutGuard)
  const args = [...usual, namesHere]
  try {
    const executablePath = await chromiumPackage.executablePath()
    return await start({ executablePath, args, headless: true })
  } catch (error) {
    const library = /loading shared libraries: (\S+):/.exec(String(error))?.[1]
    const missing = library ? `the system lacks ${library}` : String(error).split('\n')[0]
    throw new Error(
      `The browser for these tests cannot start: ${missing}. On Debian: apt-get install -y libnss3`,
    )
  }
}
