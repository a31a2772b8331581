import { readFileSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { loadAssets } from '../../server/web/assets.ts'

const project = resolve(import.meta.dirname, '../..')
const readme = readFileSync(join(project, 'README.md'), 'utf8')
const pictures = [...readme.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)]

describe('the pictures of the README', () => {
  it('show a check and a verdict, say in words what is seen, and are small', () => {
    expect(pictures.map(([, , file]) => file)).toEqual([
      'static/pictures/check.png',
      'static/pictures/verdict.png',
    ])
    for (const [, words, file] of pictures) {
      expect(words!.length).toBeGreaterThan(60)
      expect(statSync(join(project, file!)).size).toBeLessThan(150_000)
    }
  })

  it('are served to nobody', () => {
    const served = [...loadAssets().keys()]
    expect(served).toContain('/static/coilhound.svg')
    expect(served.filter((path) => /\.png$|pictures/.test(path))).toEqual([])
  })
})
