/** Opens a job on the first complaint of the front page and returns its address. */
export async function openedJob(origin: string): Promise<string> {
  const front = await (await fetch(origin)).text()
  const link = /href="(\/jobs\/new\?[^"]+no-spark)"/.exec(front)![1]!.replaceAll('&amp;', '&')
  const page = await (await fetch(origin + link)).text()
  const form = new URLSearchParams()
  for (const [tag] of page.matchAll(/<input[^>]*>/g)) {
    const { name, value, type } = attributes(tag)
    const on = type === 'checkbox' || type === 'radio' ? / checked/.test(tag) : true
    if (name && on) form.append(name, value ?? 'on')
  }
  const answer = await fetch(`${origin}/jobs`, { method: 'POST', body: form, redirect: 'manual' })
  const place = answer.headers.get('location')
  if (place === null) throw new Error(`the job was not opened: ${answer.status}`)
  return new URL(place, origin).href
}

/**
 * Milliseconds from posting "could not tell" to having the whole new page, check after check of one
 * job, as one user would wait for it.
 */
export async function postings(job: string): Promise<number[]> {
  const times: number[] = []
  let page = await (await fetch(job)).text()
  for (;;) {
    const form = nextForm(page)
    if (form === null) return times
    const began = performance.now()
    const answer = await fetch(new URL(form.action, job), { method: 'POST', body: form.fields })
    page = await answer.text()
    if (answer.status !== 200) throw new Error(`a reading was answered with ${answer.status}`)
    times.push(performance.now() - began)
  }
}

function nextForm(page: string): { action: string; fields: URLSearchParams } | null {
  const form = /<form id="reading"[^>]*action="([^"#]*)#now"[^>]*>([\s\S]*?)<\/form>/.exec(page)
  if (form === null) return null
  const fields = new URLSearchParams()
  for (const [tag] of form[2]!.matchAll(/<input[^>]*type="hidden"[^>]*>/g)) {
    const { name, value } = attributes(tag)
    fields.set(name!, value ?? '')
  }
  fields.set('choice', 'could-not-tell')
  return { action: form[1]!, fields }
}

function attributes(tag: string): Record<string, string> {
  return Object.fromEntries([...tag.matchAll(/([a-z-]+)="([^"]*)"/g)].map((m) => [m[1]!, m[2]!]))
}
