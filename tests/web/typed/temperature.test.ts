import { describe, expect, it } from 'vitest'
import { printTemperature, temperatureIn } from '../../../server/web/typed/temperature.ts'

describe('a temperature', () => {
  it.each([
    ['-10', { celsius: -10, unit: 'C' }],
    ['-10c', { celsius: -10, unit: 'C' }],
    ['−5,5', { celsius: -5.5, unit: 'C' }],
    ['– 5 °C', { celsius: -5, unit: 'C' }],
    ['20 °C', { celsius: 20, unit: 'C' }],
    ['+3', { celsius: 3, unit: 'C' }],
    ['.5', { celsius: 0.5, unit: 'C' }],
    ['20°', { celsius: 20, unit: 'C' }],
    ['14F', { celsius: -10, unit: 'F' }],
    ['14 °F', { celsius: -10, unit: 'F' }],
    ['14 deg f', { celsius: -10, unit: 'F' }],
    ['-40 Fahrenheit', { celsius: -40, unit: 'F' }],
    ['20 degrees Celsius', { celsius: 20, unit: 'C' }],
  ] as const)('is read as it is written: %s', (text, read) => {
    expect(temperatureIn(text, 'C')).toEqual(read)
  })

  it('is in the usual unit where it names none, and in its own where it does', () => {
    expect(temperatureIn('50', 'F')).toEqual({ celsius: 10, unit: 'F' })
    expect(temperatureIn('50c', 'F')).toEqual({ celsius: 50, unit: 'C' })
  })

  it.each(['', ' ', 'warm', '20 21', '20 K', 'C', '°F', '1.2.3', '--4', '20 °C F'])(
    'is none: “%s”',
    (text) => {
      expect(temperatureIn(text, 'C')).toBe(null)
    },
  )

  it.each([
    [-10, 'C', '−10\u00a0°C'],
    [-10, 'F', '14\u00a0°F'],
    [-17.7, 'F', '0.1\u00a0°F'],
    [-0.04, 'C', '0\u00a0°C'],
    [21.55, 'C', '21.6\u00a0°C'],
  ] as const)('is printed in the unit asked for: %d as %s', (celsius, unit, printed) => {
    expect(printTemperature(celsius, unit)).toBe(printed)
  })
})
