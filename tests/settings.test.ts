import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { settingsFrom } from '../server/settings.ts'

describe('settings', () => {
  it('are this machine, port 4180 and ./data, where nothing is set', () => {
    const usual = { data: resolve('data'), host: '127.0.0.1', port: 4180 }
    expect(settingsFrom({})).toEqual(usual)
    expect(settingsFrom({ COILHOUND_DATA: '', HOST: '', PORT: '' })).toEqual(usual)
  })

  it('are what the environment says', () => {
    const environment = { COILHOUND_DATA: '/srv/shop', HOST: '::1', PORT: '8080' }
    expect(settingsFrom(environment)).toEqual({ data: '/srv/shop', host: '::1', port: 8080 })
  })

  it.each([
    ['0', 0],
    ['65535', 65535],
  ])('take %s as a port', (text, port) => {
    expect(settingsFrom({ PORT: text }).port).toBe(port)
  })

  it.each(['65536', '-1', '80.5', '0x50', 'http', ' ', '99999999'])(
    'refuse “%s” as a port, in one sentence that repeats it',
    (text) => {
      expect(() => settingsFrom({ PORT: text })).toThrow(
        `PORT must be a whole number from 0 to 65535, not "${text}".`,
      )
    },
  )
})
