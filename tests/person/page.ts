import { textIn } from '../support/page.ts'

/** A job's page, as far as somebody acts on it. All of it is read off the page as it was served. */
export interface JobPage {
  readonly version: string
  readonly check: CheckOnPage | null
  readonly verdict: VerdictOnPage | null
  readonly repair: RepairOnPage | null
  /** Where to write down what was put right at once, where the page has that done first. */
  readonly mend: readonly string[]
  readonly links: readonly string[]
}

export interface CheckOnPage {
  readonly id: string
  readonly title: string
  readonly standing: string
  /** What stands above the steps: set-ups to make, and what to put back. */
  readonly setups: readonly string[]
  readonly steps: readonly string[]
  /** Everything that stands there to be read before the answers. */
  readonly words: string
  readonly minutes: number
  readonly form: FormOnPage
  /** Where it can be let stand as it is, when it is made once more. */
  readonly accept: string | null
  /** Where it is skipped, and the first of the reasons that stand there; null when it is made once more. */
  readonly skip: Skip | null
}

interface Skip {
  readonly action: string
  readonly reason: string
  readonly noTool: string
}

export interface FormOnPage {
  readonly action: string
  readonly isMeasured: boolean
  readonly answers: readonly string[]
  /** Hidden fields and those that come filled in, as a browser would send them. */
  readonly fields: Readonly<Record<string, string>>
  readonly warmths: readonly string[]
  readonly problem: string | null
}

export interface VerdictOnPage {
  readonly stamp: string
  readonly says: string
  /** What to do next, with the address of the check that each names. */
  readonly next: readonly { readonly says: string; readonly href: string | null }[]
}

export interface RepairOnPage {
  readonly action: string
  readonly parts: readonly string[]
  readonly choices: readonly string[]
  readonly steps: readonly string[]
}

export function readPage(html: string): JobPage {
  return {
    version: attribute(html, /<input type="hidden" name="version" value="(\d+)"/) ?? '',
    check: readCheck(html),
    verdict: readVerdict(html),
    repair: readRepair(html),
    mend: all(part(html, /<div class="mend">.*?<\/div>/s) ?? '', /href="([^"#]+)/g),
    links: all(html, /href="([^"#]+)/g),
  }
}

function readCheck(html: string): CheckOnPage | null {
  const section = part(html, /<section class="box check".*?<\/section>/s)
  if (!section?.includes('<form id="reading"')) return null
  const form = formOf(section)
  const doing = part(section, /<div class="do">.*<div class="answer">/s) ?? ''
  const lists = all(doing, /<ol\b[^>]*>(.*?)<\/ol>/gs).map(items)
  const time = textIn(part(section, /<dl class="terms".*?<\/dl>/s) ?? section)
  return {
    id: field(form, 'check') ?? '',
    title: textIn(part(section, /<h2 id="check".*?<\/h2>/s) ?? ''),
    standing: textIn(part(section, /<p class="label">.*?<\/p>/s) ?? ''),
    setups: lists.slice(0, -1).flat(),
    steps: lists.at(-1) ?? [],
    words: textIn(section.slice(0, section.indexOf('<form id="reading"'))),
    minutes: Number(/Time\s+([\d.]+)\s*min/.exec(time.replaceAll('\u00a0', ' '))?.[1] ?? 0),
    form: readForm(form),
    accept: attribute(section, /<form class="stand"[^>]* action="([^"#]+)/),
    skip: readSkip(section),
  }
}

/** The form of the reading, with the fields and the buttons that belong to it and stand elsewhere. */
function formOf(section: string): string {
  const elsewhere = section.matchAll(
    /<(select|button)\b[^>]* form="reading".*?<\/\1>|<input\b[^>]* form="reading"[^>]*>/gs,
  )
  const own = part(section, /<form id="reading".*?<\/form>/s) ?? ''
  return [own, ...[...elsewhere].map(([whole]) => whole)].join('\n')
}

function readSkip(section: string): CheckOnPage['skip'] {
  const form = part(section, /<form [^>]*action="[^"]*\/skips.*?<\/form>/s)
  const reason = form && attribute(form, /name="reason" value="([^"]+)"/)
  const noTool = form && attribute(form, /name="reason" value="([^"]*tool[^"]*)"/)
  return form && reason
    ? { action: attribute(form, /action="([^"#]+)/)!, reason, noTool: noTool ?? reason }
    : null
}

function readForm(form: string): FormOnPage {
  const names = [...new Set(all(form, /<input\b[^>]*\bname="([^"]+)"/g))]
  const warmth = part(form, /<select id="warmth".*?<\/select>/s) ?? ''
  const chosen = attribute(warmth, /<option value="([^"]*)" selected/)
  return {
    action: attribute(form, /action="([^"#]+)/)!,
    isMeasured: form.includes('id="typed"'),
    answers: all(form, /name="choice" value="([^"]+)"/g),
    fields: {
      ...Object.fromEntries(names.map((name) => [name, field(form, name) ?? ''])),
      ...(chosen !== null && { warmth: chosen }),
    },
    warmths: all(warmth, /<option value="([^"]*)"/g),
    problem: textOrNull(part(form, /<p class="problem".*?<\/p>/s)),
  }
}

function readVerdict(html: string): VerdictOnPage | null {
  const section = part(html, /<section class="box verdict".*?<\/section>/s)
  if (!section) return null
  const next = part(section, /<ol class="next">.*?<\/ol>/s) ?? ''
  return {
    stamp: textIn(part(section, /<p class="stamp">.*?<\/p>/s) ?? '').replaceAll('\u00a0', ' '),
    says: textIn(part(section, /<h2 id="verdict".*?<\/h2>/s) ?? ''),
    next: all(next, /<li>(.*?)<\/li>/gs).map((item) => ({
      says: textIn(item),
      href: attribute(item, /href="([^"#]+)/)?.replaceAll('&amp;', '&') ?? null,
    })),
  }
}

function readRepair(html: string): RepairOnPage | null {
  const section = part(html, /<section class="box repair".*?<\/section>/s)
  if (!section) return null
  return {
    action: attribute(section, /action="([^"#]+)/) ?? '',
    parts: (field(section, 'parts') ?? '').split('+').filter(Boolean),
    choices: all(section, /name="choice" value="([^"]+)"/g),
    steps: items(part(section, /<ol class="next">.*?<\/ol>/s) ?? ''),
  }
}

const part = (html: string, shape: RegExp): string | null => shape.exec(html)?.[0] ?? null
const attribute = (html: string, shape: RegExp): string | null => shape.exec(html)?.[1] ?? null
const all = (html: string, shape: RegExp): string[] => [...html.matchAll(shape)].map((m) => m[1]!)
const items = (list: string): string[] => all(list, /<li>(.*?)<\/li>/gs).map(textIn)
const textOrNull = (html: string | null) => (html === null ? null : textIn(html))

function field(html: string, name: string): string | null {
  const input = part(html, new RegExp(`<input\\b[^>]*\\bname="${name}"[^>]*>`))
  return input && textIn(`<b>${/\bvalue="([^"]*)"/.exec(input)?.[1] ?? ''}</b>`)
}
