import type { FastifyReply, FastifyRequest } from 'fastify'

/** The templates of one page. The fragment is a partial of that page, never a second copy of it. */
export interface PageViews {
  readonly page: string
  readonly fragment?: string
}

/**
 * Renders the page, or its fragment where a script asks for one. Only `HX-Request-Type` decides:
 * going back fetches the same address without it, and must get the page.
 */
export async function showPage(
  request: FastifyRequest,
  reply: FastifyReply,
  views: PageViews,
  model: object,
): Promise<string> {
  neverKeep(reply)
  const fragment = asksForFragment(request) ? views.fragment : undefined
  return reply.viewAsync(fragment ?? views.page, model)
}

export function asksForFragment(request: FastifyRequest): boolean {
  return request.headers['hx-request-type'] === 'partial'
}

/** A job changes under its address, and a browser must not show an old state of it as the present one. */
export function neverKeep(reply: FastifyReply): void {
  reply.header('cache-control', 'no-store').header('vary', 'HX-Request-Type')
}
