import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { FastifyReply } from 'fastify'
import { viewsFolder } from '../web/folders.ts'
import type { CardsPage } from './card.ts'

/** The style of a page that stands alone: it goes into the page, so that it is there without a network. */
const style = `\n${readFileSync(join(viewsFolder, 'cards', 'card.css'), 'utf8')}`

/** Nothing is loaded or sent from such a page, and no style but its own is taken, by its hash. */
const policy = [
  "default-src 'none'",
  `style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'`,
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** Answers with a page that works when it is saved and opened from a disk. */
export async function showAlone(
  reply: FastifyReply,
  page: Omit<CardsPage, 'style'>,
): Promise<string> {
  reply.header('content-security-policy', policy).header('cache-control', 'no-cache')
  const html = await reply.viewAsync('cards/page', { ...page, style } satisfies CardsPage)
  return html.replaceAll(betweenLines, '\n').replaceAll(ends, '').replaceAll(beforeBlock, '')
}

/** Templates leave empty lines where they decide something; a card is to be small. */
const betweenLines = /\n\s*\n+/g

/**
 * The end of a list's item may be left out wherever it stands, and that of a paragraph where what follows is no phrase
 * (HTML Standard, 13.1.2.4): some hundreds on a card.
 */
const ends = /<\/li>|<\/p>/g

/** A line may as well not begin where a block does: there are a thousand of those. */
const beforeBlock = /\n(?=<\/?(?:details|div|h3|li|ol|p|section|summary|ul)\b)/g
