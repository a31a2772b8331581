import { describe, expect, it } from 'vitest'
import { sentencesIn } from '../../server/knowledge/instantiate/words.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const { checkKinds, setups, cautions, home, machines } = shippedKnowledge()
const phoneOf = (id: string) => checkKinds.get(id)!.phone

describe('what is read to an owner', () => {
  it('takes a hot plug out as gently as at the bench, dries it, and leaves it tight', () => {
    const hot = checkKinds.get('spark-old-plug-hot')!
    for (const text of [hot.phone, hot.do.join(' ')]) {
      expect(text).toMatch(/slowly, since threads in a hot head tear/)
      expect(text).toContain('Wipe it dry where it is wet')
      // No later page would say it.
      expect(text).not.toMatch(/tighten it once/i)
    }
  })

  it('runs no engine again that a check has left half open', () => {
    const { lasts } = setups.setups['run-until-hot']!
    expect(lasts!.phone).toMatch(
      /join all that was apart, and put every cover on.*Set it for work/s,
    )
    expect(lasts!.do).toMatch(/put all together, and let it run/)
  })

  it('speaks of heat only as what may be, since it may never have run', () => {
    expect(cautions.cautions['hot-parts']!.phone).toMatch(/^If it has run/)
    const cooled = [
      setups.setups['plugs-out-grounded']!.phone!,
      ...home.ways['other-plug']!.do,
    ].filter((text) => /\bcool\b/.test(text))
    expect(cooled).toHaveLength(2)
    for (const text of cooled) expect(text).toMatch(/\bIf it (is hot|has run), let it cool/)
  })

  it('lets go of a throttle that it has opened for the start, in each way home', () => {
    const opening = Object.values(home.ways).filter(({ do: steps }) =>
      /throttle (halfway|wide open)/.test(steps.join(' ')),
    )
    expect(opening.length).toBeGreaterThan(1)
    for (const { do: steps } of opening) expect(steps.at(-1)).toMatch(/as soon as it fires/)
  })

  it('dries all plugs of a flooded engine', () => {
    const { says, do: steps } = home.ways['dry-plug']!
    expect([says, ...steps].join(' ')).not.toMatch(/\b(the|wet) plug\b/)
  })

  it('calls a rag a rag on every page', () => {
    const { partKinds } = shippedKnowledge()
    const all = JSON.stringify([[...checkKinds.values(), ...partKinds.values()], setups, home])
    expect(all.match(/\brags?\b/g)!.length).toBeGreaterThan(20)
    expect(all.match(/[^.]*\bcloth\b[^.]*/g)).toBeNull()
  })

  it('judges no gap by a thing as thin as a good one', () => {
    expect(phoneOf('plug-look-one')).not.toMatch(/thumbnail|card|coin/)
    expect(phoneOf('plug-look-one')).toContain('worn round')
  })

  it('holds the speed of a starter against what it was in such weather', () => {
    for (const id of ['ask-cranking', 'cranking-speed']) {
      const { phone, answers } = checkKinds.get(id)!
      for (const text of [phone, ...answers!.map(({ says }) => says)]) {
        expect(text).toContain('in such weather')
      }
    }
  })

  it('asks for a screwdriver wherever a cover is held by screws or bolts', () => {
    const held = [...machines.values()].flatMap(({ access }) =>
      Object.values(access).filter(({ do: says }) => /\b(screws|bolts)\b/.test(says)),
    )
    expect(held.length).toBeGreaterThan(10)
    expect(held.filter(({ tools = [] }) => tools.length === 0)).toEqual([])
    const onBoat = shippedCases().find(
      ({ machine, complaint }) => machine.id === 'ferrymere-3t' && complaint.id === 'no-spark',
    )!
    const tools = onBoat.checks.get('spark-stop-at-plug')!.tools.map(({ id }) => id)
    expect(tools).toContain('hand-tools')
  })

  it('asks for no glass, and opens no hose while its tap is open', () => {
    for (const id of ['fuel-look', 'fuel-flow', 'bowl-drain']) {
      expect(phoneOf(id)).not.toMatch(/\bglass\b/)
    }
    expect(phoneOf('fuel-flow')).toMatch(/close the tap\..*Take the hose off/s)
  })

  it('smells where there is something to smell, be it an outboard, and looks below its cowl', () => {
    expect(phoneOf('ask-flooded')).not.toContain('exhaust')
    const hot = shippedCases().find(
      ({ machine, complaint }) =>
        machine.id === 'ferrymere-3t' && complaint.id === 'hard-start-hot',
    )!
    const look = [...hot.checks.values()].find(({ id }) => id.startsWith('hose-look'))!
    expect(look.setups.map(({ id }) => id)).toContain('access cowl')
    expect(look.phone[0]).toMatch(/^Let it cool, if it has run\./)
  })

  it('asks nothing that no answer takes', () => {
    const aside =
      /\b(how old|was anything added|added to the wiring lately|last work|brought it back|the throttle\?|dim\?|did you buy|put in last|smell of fuel then|how you sit)/i
    const asked = [...checkKinds.values()].filter(({ asked, owner }) => asked && owner === 'yes')
    const questions = [...asked, checkKinds.get('fuel-look')!].flatMap(({ id, phone }) =>
      sentencesIn(phone).flatMap((says) => (says.endsWith('?') ? `${id}: ${says}` : [])),
    )
    expect(questions.length).toBeGreaterThan(30)
    expect(questions.filter((says) => aside.test(says))).toEqual([])
  })

  it('calls a flywheel by its name, for a machine may have other big wheels', () => {
    const spoken = [
      ...[...checkKinds.values()].map(({ phone }) => phone),
      ...Object.values(cautions.cautions).map(({ phone }) => phone),
    ]
    expect(spoken.filter((text) => text.includes('big wheel'))).toEqual([])
  })

  it('waits for no smell to go that stays in the intake of a flooded engine', () => {
    expect(cautions.cautions['vapour-ignites']!.phone).toMatch(/smell none around it/)
    expect(home.ways['dry-plug']!.do.join(' ')).toMatch(/smell no fuel around it/)
  })

  it('has a primer pressed before it is judged, and before the start where a bulb in the hose is one', () => {
    expect(phoneOf('choke-look')).toMatch(/primer, press it three times\. Does it .*grow firm\?/s)
    const bulbs = [...machines.values()].filter(({ parts }) =>
      parts.some(({ where = '' }) => /primer bulb/.test(where)),
    )
    expect(bulbs.length).toBeGreaterThan(0)
    for (const { stop } of bulbs) expect(stop?.start).toMatch(/primer bulb squeezed firm/)
  })

  it('goes home in one go with what does not start again hot', () => {
    const { try: ways } = shippedKnowledge().complaints.get('hard-start-hot')!.home
    expect(ways['cool-and-stay-on']).toContain('spark-gone-hot')
    expect(home.ways['cool-and-stay-on']!.do.at(-1)).toContain('without stopping it')
  })
})
