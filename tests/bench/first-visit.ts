import { get } from 'node:http'

/** Bytes on the wire of one address, as a browser asks for it, and the text it holds. */
function fetched(address: string): Promise<{ bytes: number; headers: Record<string, unknown> }> {
  return new Promise((done, failed) => {
    const headers = { 'accept-encoding': 'gzip, deflate, br' }
    get(address, { headers }, (response) => {
      let bytes = 0
      response.on('data', (chunk: Buffer) => {
        bytes += chunk.length
      })
      response.on('end', () => done({ bytes, headers: response.headers }))
    }).on('error', failed)
  })
}

/** Bytes of a page and of all that it loads, compressed as the server sends them. */
export async function firstVisit(address: string): Promise<{ page: number; all: number }> {
  const html = await (await fetch(address)).text()
  const loaded = [...html.matchAll(/(?:src|href)="(\/static\/[^"]+)"/g)].map((match) => match[1]!)
  if (loaded.length === 0) throw new Error(`nothing is loaded by ${address}`)
  const page = (await fetched(address)).bytes
  const origin = new URL(address).origin
  const rest = await Promise.all(loaded.map((path) => fetched(origin + path)))
  return { page, all: rest.reduce((sum, { bytes }) => sum + bytes, page) }
}
