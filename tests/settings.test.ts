import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { settingsFrom } from '../server/settings.ts'

describe('settings', () => {
  it('are this machine, port 4180 and ./data, where nothing is set', () => {
    const names = ['127.0.0.1']
    const usual = { data: resolve('data'), host: '127.0.0.1', port: 4180, names, currency: '' }
    expect(settingsFrom({})).toEqual(usual)
    const empty = {
      COILHOUND_DATA: '',
      HOST: '',
      PORT: '',
      COILHOUND_NAMES: '',
      COILHOUND_CURRENCY: ' ',
    }
    expect(settingsFrom(empty)).toEqual(usual)
  })

  it('are what the environment says', () => {
    const environment = {
      COILHOUND_DATA: '/srv/shop',
      HOST: '::1',
      PORT: '8080',
      COILHOUND_NAMES: 'workshop.lan',
      COILHOUND_CURRENCY: ' kr ',
    }
    const place = { data: '/srv/shop', host: '::1', port: 8080 }
    const settings = { ...place, names: ['workshop.lan'], currency: 'kr' }
    expect(settingsFrom(environment)).toEqual(settings)
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

  it.each(['€', 'CHF', 'zł'])('take %s as a currency', (text) => {
    expect(settingsFrom({ COILHOUND_CURRENCY: text }).currency).toBe(text)
  })

  it.each(['12', 'EUR or USD', '<b>', 'doubloons'])('refuse “%s” as a currency', (text) => {
    expect(() => settingsFrom({ COILHOUND_CURRENCY: text })).toThrow(
      `COILHOUND_CURRENCY must be a sign or letters, eight at most, such as EUR, not "${text}".`,
    )
  })

  it.each([
    ['workshop.lan,bench-2', ['workshop.lan', 'bench-2']],
    [' Workshop.LAN. , ', ['workshop.lan']],
    ['Bücher.example', ['xn--bcher-kva.example']],
  ])('take “%s” as names, written as browsers write them', (text, names) => {
    expect(settingsFrom({ COILHOUND_NAMES: text, HOST: '::1' }).names).toEqual(names)
  })

  it('count the host among the names, where it is one', () => {
    const { names } = settingsFrom({ HOST: 'Bench.lan', COILHOUND_NAMES: 'workshop.lan' })
    expect(names).toEqual(['bench.lan', 'workshop.lan'])
  })

  it.each([
    '*',
    '*.lan',
    'http://workshop.lan',
    'workshop.lan:4180',
    'two words',
    'a;b',
    '[::1]',
    'a..b',
  ])('refuse “%s” as a name, in one sentence that repeats it', (text) => {
    expect(() => settingsFrom({ COILHOUND_NAMES: `bench,${text}` })).toThrow(
      `COILHOUND_NAMES must be names of this computer with commas between, such as workshop.local, not "${text}".`,
    )
  })
})
