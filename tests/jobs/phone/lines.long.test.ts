import { describe, expect, it } from 'vitest'
import { checkLines } from '../../../server/jobs/phone/check-lines.ts'
import { waysHome } from '../../../server/jobs/phone/home/ways.ts'
import { saying } from '../../../server/jobs/phone/saying.ts'
import type { Line } from '../../../server/jobs/phone/view.ts'
import { phoneWords } from '../../../server/knowledge/instantiate/setup-cards.ts'
import { fill, fillingsOf, sentencesIn } from '../../../server/knowledge/instantiate/words.ts'
import { shippedCases, shippedKnowledge } from '../../support/knowledge.ts'
import { type ShippedJob, shippedJob } from '../../support/shipped-job.ts'

const signals = ['danger', 'warning', 'caution', 'notice']

/** Turned over for its speed, for the hum of its pump or the tick of an injector, or to see that there is no spark at OFF. */
const withoutSpark = [
  'spark-at-off',
  'jump-start',
  'cranking-speed',
  'known-good-unit',
  'injector-tick',
]

describe('what is said to an owner about a check', () => {
  const kits = Object.keys(shippedKnowledge().owner.kit)
  it.each(
    shippedCases().map((kase) => [`${kase.complaint.title}, ${kase.machine.name}`, kase] as const),
  )('is whole sentences, cautions first: %s', (_, kase) => {
    const job = shippedJob(
      {
        machine: kase.machine.id,
        complaint: kase.complaint.id,
        where: 'trailside',
        who: 'owner',
        kit: kits,
      },
      {},
    )
    const fit = [...kase.checks.values()].filter(({ owner }) => owner.fit)
    expect(fit.length).toBeGreaterThan(0)
    const wrong = fit.flatMap((card) => {
      // An engine that runs is stopped before anything is heard.
      const lines = checkLines(job, card).filter(({ label }, i) => i > 0 || label !== 'stop it')
      const turning = card.cautions
        .filter(({ engine }) => engine !== undefined)
        .map(({ phone }) => phone)
      const ofTurning = ({ says }: Line) => turning.some((phone) => phone.includes(says))
      const from = (some: (line: Line) => boolean) => lines.slice(lines.findIndex(some))
      const isCaution = ({ label }: Line) => signals.includes(label)
      // Whatever is done or made ready has its cautions before it; those of an engine that turns may come after that.
      const late = [
        ...from((line) => !isCaution(line)).filter((line) => isCaution(line) && !ofTurning(line)),
        ...from(({ label }) => ['do', 'ask', 'name it'].includes(label)).filter(isCaution),
      ]
      const odd = lines.filter(({ says }) => !/^[A-Z{"“].*[.?!:]$/s.test(says) || /[{}]/.test(says))
      return [...late, ...odd].map(({ says }) => `${card.id}: ${says}`)
    })
    expect(wrong).toEqual([])
  })

  it('warns of an engine that runs before it is run hot for the check', () => {
    const job = shippedJob(
      {
        machine: 'larkfell-2i',
        complaint: 'dies-hot',
        where: 'trailside',
        who: 'owner',
        kit: kits,
      },
      {},
    )
    const hot = [...job.kase.checks.values()].filter(
      ({ owner, setups }) => owner.fit && setups.some(({ id }) => id === 'run-until-hot'),
    )
    expect(hot.length).toBeGreaterThan(0)
    for (const card of hot) {
      const lines = checkLines(job, card)
      const run = lines.findIndex(({ label }) => label === 'make ready')
      const running = card.cautions.filter(({ engine }) => engine === 'running')
      expect(running.length).toBeGreaterThan(0)
      for (const { phone } of running) {
        const said = lines.findIndex(({ says }) => sentencesIn(phone).includes(says))
        expect(said, card.id).toBeGreaterThanOrEqual(0)
        expect(said, card.id).toBeLessThan(run)
      }
    }
  })

  it('is told of what is hot wherever hands go to an engine that was run last', () => {
    const hot = /exhaust and engine burn you|keep off what is hot/
    const said = ['starts-then-dies', 'bogs-limited', 'misfires-at-speed'].flatMap((complaint) => {
      const open = { machine: 'pedlar-1c', complaint, where: 'trailside', who: 'owner' }
      const begun = (readings: Record<string, string>) =>
        shippedJob({ ...open, kit: kits } as ShippedJob, readings)
      const fit = [...begun({}).kase.checks.values()].filter(
        ({ owner, asked }) => owner.fit && !asked,
      )
      const runs = fit.filter(({ engine }) => engine === 'running')
      return runs.flatMap((run) => {
        const after = begun({ [run.id]: '?' })
        return fit
          .filter((card) => card !== run)
          .map((card) => ({
            what: `${card.id} after ${run.id}`,
            isTold: checkLines(after, card).some(({ says }) => hot.test(says)),
          }))
      })
    })
    expect(said.some(({ what }) => /^stop-wire-look.*new-plug-tried/.test(what))).toBe(true)
    expect(said.filter(({ isTold }) => !isTold)).toEqual([])
  })

  it('sets it for work once where its stop is tried before that', () => {
    const open = { machine: 'haulmoor-1e', complaint: 'cuts-out', where: 'trailside', who: 'owner' }
    const begun = (readings: Record<string, string>) =>
      shippedJob({ ...open, kit: kits } as ShippedJob, readings)
    const parts = [...begun({}).kase.checks.values()].find(({ setups }) =>
      setups.some(({ stopOff }) => stopOff),
    )!
    const job = begun({ [parts.id]: '?' })
    const fit = [...job.kase.checks.values()].filter(({ owner, asked }) => owner.fit && !asked)
    const tried = fit.flatMap((card) => {
      const says = checkLines(job, card).map((line) => line.says)
      const stop = says.findIndex((each) => /The engine must die at once/.test(each))
      if (stop < 0 || card.engine !== 'running') return []
      const sets = says.slice(stop).filter((each) => /\bset it for work\b/i.test(each))
      return [{ check: card.id, sets: sets.length }]
    })
    expect(tried.length).toBeGreaterThan(3)
    expect(tried.filter(({ sets }) => sets !== 1)).toEqual([])
  })

  it('has its stop tried by no check that turns it at OFF: that could not be told', () => {
    const told = shippedCases().flatMap(({ machine, complaint, checks }) => {
      const open = { machine: machine.id, complaint: complaint.id, who: 'owner' } as const
      const parts = [...checks.values()].find(({ setups }) => setups.some(({ stopOff }) => stopOff))
      const [byRope, pulls] = ['compression-by-rope', 'plug-after-pulls'].map((id) =>
        checks.get(id),
      )
      if (!parts || !byRope || !pulls) return []
      const job = shippedJob(open, { [parts.id]: '?' })
      const isTried = (card: typeof pulls) =>
        checkLines(job, card).some(({ label }) => label === 'try the stop')
      return [{ atOff: isTried(byRope), atRun: isTried(pulls) }]
    })
    expect(told.length).toBeGreaterThan(3)
    expect(told).toEqual(told.map(() => ({ atOff: false, atRun: true })))
  })

  it('has an engine cool, or gloves on, before a plug is screwed out of one that ran', () => {
    const cards = shippedCases().flatMap(({ checks }) => [...checks.values()])
    const hot = cards.filter(
      ({ owner, engine, tools }) =>
        owner.fit && engine === 'running' && tools.some(({ id }) => id === 'plug-wrench'),
    )
    expect(new Set(hot.map(({ id }) => id.split('.')[0])).size).toBeGreaterThan(3)
    const bare = hot.filter(({ phone }) => {
      const out = phone.findIndex((says) => /\bscrew\b.*\bout\b|\bunscrew\b/i.test(says))
      return !phone
        .slice(0, out + 1)
        .some((says) => /stays cool|five minutes at least|gloves on/i.test(says))
    })
    expect(bare.map(({ id }) => id)).toEqual([])
    // Each cap comes off by itself, and not by the plug below it.
    const capped = hot.filter(
      ({ phone }) => !phone.some((says) => /pull .*caps? .*off/i.test(says)),
    )
    expect(capped.map(({ id }) => id)).toEqual([])
  })

  it('has no sentence that is only a label: it says what to do', () => {
    const cards = shippedCases().flatMap(({ checks }) => [...checks.values()])
    const label =
      /^(?:key|switch(?! it| the)|stop switch|key switch|lamps?|fuel|gear|caps?|plugs?|meter|gloves|tester)\b[^,.?:]*\b(?:at|on|off|out|closed|open)\b[^.?]*\.$/i
    const labels = cards
      .filter(({ owner }) => owner.fit)
      .flatMap(({ phone }) => phone.filter((says) => label.test(says)))
    expect([...new Set(labels)]).toEqual([])
  })

  it('says once what is made ready: no check repeats the words of its own set-ups', () => {
    const fit = shippedCases()
      .flatMap(({ checks }) => [...checks.values()])
      .filter(({ owner }) => owner.fit)
    const twice = fit.flatMap(({ id, phone, setups }) => {
      const made = setups.flatMap((setup) => sentencesIn(phoneWords(setup)))
      return phone
        .filter((says) => made.includes(says) && !says.startsWith('See that it cannot start'))
        .map((says) => `${id}: ${says}`)
    })
    const parted = fit.filter(
      ({ setups, phone }) =>
        setups.some(({ id }) => id === 'stop-circuit-unplugged') &&
        phone.some((says) => /^Pull .*stop wire/.test(says)),
    )
    expect(twice).toEqual([])
    expect(parted.map(({ id }) => id)).toEqual([])
  })

  it('is told a caution in full once, then in half a sentence, and anew where it comes anew', () => {
    const open = { machine: 'pedlar-1c', complaint: 'no-spark', where: 'trailside', who: 'owner' }
    const job = (readings: Record<string, string>) =>
      shippedJob({ ...open, kit: kits } as ShippedJob, readings)
    const says = (readings: Record<string, string>, check: string) => {
      const standing = job(readings)
      return checkLines(standing, standing.kase.checks.get(check)!).map((line) => line.says)
    }
    const kills = /^The spark can kill/
    const vapour = /^A spark sets fuel alight/
    const first = says({}, 'spark-old-plug.single')
    expect(first.some((line) => kills.test(line))).toBe(true)
    expect(first.some((line) => vapour.test(line))).toBe(true)
    const second = says({ 'spark-old-plug.single': 'none' }, 'spark-stop-at-plug')
    expect(second.some((line) => kills.test(line) || vapour.test(line))).toBe(false)
    expect(second.filter((line) => /^As before: .*hands off leads/.test(line))).toHaveLength(1)
    // The plugs went back in between, and come out anew.
    const anew = says(
      { 'spark-old-plug.single': 'none', 'cap-look.cap': 'good' },
      'spark-stop-at-plug',
    )
    expect(anew.some((line) => kills.test(line))).toBe(false)
    expect(anew.some((line) => vapour.test(line))).toBe(true)
  })

  it('has it switched off before the first hand, and says so once', () => {
    const open = { machine: 'pedlar-1c', complaint: 'no-spark', where: 'trailside', who: 'owner' }
    const standing = shippedJob({ ...open, kit: kits } as ShippedJob, {})
    const says = checkLines(standing, standing.kase.checks.get('spark-stop-at-plug')!).map(
      (line) => line.says,
    )
    const off = says.findIndex((line) => line.startsWith('See that it cannot start'))
    const cover = says.findIndex((line) => /engine cover/.test(line))
    expect(off).toBeGreaterThanOrEqual(0)
    expect(off).toBeLessThan(cover)
    expect(says.filter((line) => line === says[off])).toHaveLength(1)
  })

  it('has it set for work again before it is run, where it was switched off for the hands', () => {
    const left = shippedCases().flatMap((kase) => {
      const { machine, complaint } = kase
      const job = { machine: machine.id, complaint: complaint.id, where: 'trailside', who: 'owner' }
      const standing = shippedJob({ ...job, kit: kits } as ShippedJob, {})
      const [set, off, turn] = ['{run}', '{off}', '{turn}'].map((name) =>
        fill(name, fillingsOf(machine)).replace(/\.$/, '').toLowerCase(),
      ) as [string, string, string]
      const starts = (line: string) =>
        (/\bstart it\b|\blet it (run|idle|warm)|^try it/.test(line) || line.includes(turn)) &&
        !/cannot|from memory|next start|when you|while you/.test(line)
      return [...kase.checks.values()]
        .filter(({ owner, asked, engine }) => owner.fit && !asked && engine !== 'stopped')
        .filter(({ id }) => !withoutSpark.includes(id.split('.')[0]!))
        .flatMap((card) => {
          const says = checkLines(standing, card).map((line) => line.says.toLowerCase())
          return says.flatMap((line, i) => {
            if (!starts(line)) return []
            const last = says.slice(0, i).findLastIndex((each) => each.includes(off))
            const isSet = last < 0 || says.slice(last, i + 1).some((each) => each.includes(set))
            return isSet ? [] : [`${machine.id} ${complaint.id} ${card.id}: ${line}`]
          })
        })
    })
    expect(left).toEqual([])
  })

  it('is left at OFF by a check that had it at RUN and does not run it', () => {
    const left = shippedCases().flatMap((kase) => {
      const { machine, complaint } = kase
      const job = { machine: machine.id, complaint: complaint.id, where: 'trailside', who: 'owner' }
      const standing = shippedJob({ ...job, kit: kits } as ShippedJob, {})
      const off = fill('{off}', fillingsOf(machine)).toLowerCase()
      return [...kase.checks.values()]
        .filter(({ owner, asked, engine }) => owner.fit && !asked && engine !== 'running')
        .flatMap((card) => {
          const says = checkLines(standing, card).map((line) => line.says)
          const set = says.findLastIndex((line) => /set it for work|\b(at|to) RUN\b/i.test(line))
          const isOff = says
            .slice(set)
            .some(
              (line) =>
                line.toLowerCase().includes(off) || /\b(at|to) OFF\b|\boff again\b/.test(line),
            )
          return set < 0 || isOff ? [] : [`${machine.id} ${complaint.id} ${card.id}`]
        })
    })
    expect(left).toEqual([])
  })

  it('lets down what is propped up before a start, and tries the stop once hands are off', () => {
    const open = { machine: 'haulmoor-1e', complaint: 'no-spark', where: 'trailside', who: 'owner' }
    const standing = shippedJob({ ...open, kit: kits } as ShippedJob, {
      'spark-stop-at-plug': 'none',
    })
    const lines = checkLines(standing, standing.kase.checks.get('added-off')!)
    const at = (says: RegExp) => lines.findIndex((line) => says.test(line.says))
    const order = [
      at(/let the load bed down/),
      at(/^Otherwise switch it off, and unplug it/),
      at(/while you turn it with the starter or the rope/),
      at(/^If it runs now/),
      at(/^Does it fire now/),
    ]
    expect(order).not.toContain(-1)
    expect(order).toEqual(order.toSorted((a, b) => a - b))
    expect(lines.findIndex(({ label }) => label === 'try the stop')).toBe(order[3])
    // It is stopped after that, and not started for it once more.
    expect(at(/start it again\.$/)).toBe(-1)
  })

  it('has a box changed over shut in again before it is worked with it', () => {
    const cards = shippedCases().flatMap(({ checks }) => [...checks.values()])
    const worked = cards.filter(
      ({ id, phone }) =>
        /^known-good-/.test(id) &&
        phone.some((says) => /work it as|the way it used to fail/.test(says)),
    )
    expect(worked.length).toBeGreaterThan(0)
    const open = worked.filter(({ phone }) => !phone.some((says) => /^Close all/.test(says)))
    expect([...new Set(open.map(({ id }) => id))]).toEqual([])
  })

  it('is asked to be out of the way and not hurt before anything is said of the machine', () => {
    const open = { machine: 'larkfell-2i', complaint: 'no-spark', where: 'trailside', who: 'owner' }
    const standing = shippedJob({ ...open, kit: kits } as ShippedJob, {})
    const [first] = checkLines(
      standing,
      [...standing.kase.checks.values()].find(({ id }) => id.startsWith('spark-new-plug'))!,
    )
    expect(first!.says).toMatch(/^Get out of the way of others first/)
  })

  it('is told of fuel in full again once it was smelt, until the engine has turned after that', () => {
    const open = { machine: 'pedlar-1c', complaint: 'no-spark', where: 'trailside', who: 'owner' }
    const says = (readings: Record<string, string>, check: string) => {
      const standing = shippedJob({ ...open, kit: kits } as ShippedJob, readings)
      return checkLines(standing, standing.kase.checks.get(check)!).map((line) => line.says)
    }
    const vapour = /^A spark sets fuel alight/
    const fuel = /^Fuel burns at one spark/
    const spark = { 'spark-old-plug.single': 'none' }
    expect(says(spark, 'spark-stop-at-plug').some((line) => vapour.test(line))).toBe(false)
    const smelt = { ...spark, 'ask-flooded': 'much-fuel' }
    expect(says(smelt, 'spark-stop-at-plug').some((line) => vapour.test(line))).toBe(true)
    expect(says({ ...spark, 'ask-flooded': 'little' }, 'spark-stop-at-plug')).not.toContainEqual(
      expect.stringMatching(vapour),
    )
    // What is only looked at needs none of it.
    expect(says(smelt, 'cap-look.cap').some((line) => fuel.test(line))).toBe(false)
    const after = { ...smelt, 'spark-stop-at-plug': 'none' }
    expect(says(after, 'spark-new-plug.plug').some((line) => vapour.test(line))).toBe(false)
  })

  it('says “that plug” only of one that was named', () => {
    const unnamed = shippedCases().flatMap(({ machine, checks, parts }) =>
      [...checks.values()]
        .filter(({ owner }) => owner.fit)
        .flatMap(({ id, part = '', phone, setups }) => {
          const that = phone.findIndex((says) => /\bthat plug\b/i.test(says))
          const before = phone
            .slice(0, that + 1)
            .join(' ')
            .split(/\bthat plug\b/i)[0]!
          const apart = setups.filter((setup) => setup.id.startsWith('unplug '))
          const isNamed =
            /\bplugs?\b/i.test(`${before} ${parts.get(part)?.name ?? ''}`) || apart.length === 1
          return that < 0 || isNamed ? [] : [`${machine.id} ${id}`]
        }),
    )
    expect([...new Set(unnamed)]).toEqual([])
  })

  it('is told when a check is made once more', () => {
    const job = shippedJob(
      { machine: 'pedlar-1c', complaint: 'no-spark', where: 'trailside', who: 'owner', kit: kits },
      { 'spark-old-plug.single': 'none' },
    )
    const card = job.kase.checks.get('spark-old-plug.single')!
    expect(checkLines(job, card, true)[0]!.says).toContain('once more')
    expect(checkLines(job, card).some(({ says }) => says.includes('once more'))).toBe(false)
  })

  it('ends in a question, or in what they are to read out, for every check that is fit', () => {
    const cards = shippedCases().flatMap(({ checks }) => [...checks.values()])
    const silent = cards.filter(
      (card) => card.owner.fit && !/\?$|\b(read|tell|show|say)\b/i.test(card.asks),
    )
    expect([...new Set(silent.map(({ id }) => id.split('.')[0]))]).toEqual([])
  })
})

describe('one sentence at a time', () => {
  const lines = ['One.', 'Two.', 'Three.'].map((says) => ({ says, label: 'do' }))
  const at = (asked: number) => saying(lines, asked, (number) => `#${number}`)

  it('has a way on but at the last, and a way back but at the first', () => {
    expect(at(1)).toMatchObject({ at: 0, place: '1 of 3', next: '#2' })
    expect(at(1)).not.toHaveProperty('back')
    expect(at(3)).toMatchObject({ at: 2, back: '#2' })
    expect(at(3)).not.toHaveProperty('next')
  })

  it.each([
    [0, 0],
    [-4, 0],
    [99, 2],
  ])('stands at the nearest sentence for %d', (asked, index) => {
    expect(at(asked).at).toBe(index)
  })
})

describe('ways home', () => {
  it('put first what gets around the likeliest', () => {
    const open = { machine: 'pedlar-1c', complaint: 'no-spark', who: 'owner', kit: [] } as const
    const ways = (readings: Record<string, string>) =>
      waysHome(shippedJob(open, readings)).map(([id]) => id)
    const before = ways({})
    const look = 'stop-switch-look.stop-switch'
    const after = ways({ [look]: 'out-of-place' })
    expect([...after].sort()).toEqual([...before].sort())
    expect(after[0]).toBe('controls-home')
  })

  it.each([
    ['on-half-choke', 'starts-then-dies', /^choke-keeps-it\./, 'dies', 'runs-on'],
    ['on-half-choke', 'bogs-limited', /^choke-at-throttle$/, 'worse', 'better'],
    ['no-choke-open', 'hard-start-hot', /^wide-open-hot$/, 'no', 'starts'],
  ])('leave out %s once that was tried in vain: %s', (way, complaint, check, vain, helped) => {
    const open = { machine: 'pedlar-1c', complaint, who: 'owner', kit: [] } as const
    const id = [...shippedJob(open, {}).kase.checks.keys()].find((each) => check.test(each))!
    const waysAfter = (answer: string) =>
      waysHome(shippedJob(open, { [id]: answer })).map(([name]) => name)
    expect(waysAfter('?')).toContain(way)
    expect(waysAfter(helped)).toContain(way)
    expect(waysAfter(vain)).not.toContain(way)
  })
})
