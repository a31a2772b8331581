import { describe, expect, it } from 'vitest'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { fill, fillingsOf, sentencesIn } from '../../server/knowledge/instantiate/words.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

/** Every check of every case, as it reads on its machine. */
const pages = shippedCases().flatMap((kase) =>
  [...kase.checks.values()].map((card) => ({ kase, card })),
)
type Page = { readonly kase: Case; readonly card: CheckCard }

const named = ({ kase, card }: Page) => `${card.id} on ${kase.machine.id}`
const hasIgniter = ({ kase }: Page) => kase.machine.parts.some(({ role }) => role === 'igniter')
const steps = ({ card }: Page) => card.do.join(' ')
const readied = ({ card }: Page) => card.setups.map((setup) => setup.do).join(' ')
const all = (page: Page) => `${readied(page)} ${steps(page)}`

/** Pages of a kind that break a rule; the kind must not be empty, or the rule would be about nothing. */
function breaking(kind: (page: Page) => boolean, rule: (page: Page) => boolean): string[] {
  const those = pages.filter(kind)
  expect(those.length).toBeGreaterThan(3)
  return [...new Set(those.filter((page) => !rule(page)).map(named))]
}

const looksForSpark = ({ card }: Page) =>
  card.engine === 'cranking' &&
  /\bsparks?\b|^pulse at the coil|^strength of the pulse/i.test(
    [card.title, ...(card.answers ?? []).map(({ says }) => says)].join('\n'),
  )

/** Words of hands on what the spark jumps from. */
const handles =
  /\b(pull(?! the rope| briskly)|push|unscrew|screw|twist|clamp|put|fit|exchange|ground (?:it|any|every)|open)\b[^.]*\b((?<!tank |pull its )caps?|plug leads?|spark plugs?|testers?|new plug|old plug|it a little)\b/i

/** Sentences of a page that are followed while the controls stand at RUN, and have hands on that. */
function handledAtRun(page: Page): string[] {
  const { run, off } = page.kase.machine.stop!
  let atRun = true
  const sentences = [...page.card.setups.map(({ do: says }) => says), ...page.card.do].flatMap(
    (text) => text.split(/(?<=[.?!]) +/),
  )
  return sentences.filter((sentence) => {
    if (sentence.includes(off)) atRun = false
    const wrong =
      atRun && handles.test(sentence) && !/^(every cap|any other|caps)\b/i.test(sentence)
    if (sentence.includes(run)) atRun = true
    return wrong
  })
}

describe('what a page tells people to do', () => {
  it('has the controls at RUN wherever a spark is looked for, in the words of the machine', () => {
    const rule = (page: Page) => steps(page).includes(page.kase.machine.stop!.run)
    expect(breaking(looksForSpark, rule)).toEqual([])
    expect(pages.some((page) => looksForSpark(page) && /Key switch at RUN/.test(steps(page)))).toBe(
      true,
    )
  })

  it('is turned at OFF where only the pump and the injectors are listened to, or a lamp on them watched', () => {
    const listened = ({ card }: Page) =>
      card.engine === 'cranking' &&
      card.measurand === undefined &&
      /^(pump|sound of the (pump|injector)|test lamp at the injector|injection pulse)\b/i.test(
        card.title,
      )
    const rule = (page: Page) => {
      const { run, off } = page.kase.machine.stop!
      return steps(page).includes(`${off}, so that it cannot start`) && !steps(page).includes(run)
    }
    expect(breaking(listened, rule)).toEqual([])
  })

  it('has the clamp of a ground tried that ends on a battery', () => {
    const onBattery = ({ card }: Page) => card.id === 'ground-look.battery-ground'
    expect(breaking(onBattery, (page) => /clamp on a post/.test(steps(page)))).toEqual([])
  })

  it('never has a key worked as far as START, where it could turn the engine', () => {
    const switches = pages.filter(({ card }) =>
      /^(stop-switch-(look|to-off)|stop-line(-off)?)\./.test(card.id),
    )
    const texts = [
      ...switches.flatMap(({ card: { do: does, phone, answers = [] } }) => [
        ...does,
        ...phone,
        ...answers.flatMap(({ mend }) => (mend ? [mend.says, mend.phone] : [])),
      ]),
      ...shippedCases().flatMap(({ faults, machine }) =>
        [...faults.values()].flatMap(({ part, mend }) =>
          machine.parts.find(({ id }) => id === part)?.kind === 'stop-switch'
            ? (mend?.phone ?? [])
            : [],
        ),
      ),
    ]
    const worked = new Set(
      texts.flatMap(sentencesIn).filter((says) => /\bwork (it|the|each)\b/i.test(says)),
    )
    expect(worked.size).toBeGreaterThan(5)
    expect([...worked].filter((says) => !says.includes('a key never as far as START'))).toEqual([])
  })

  it('never puts a control to RUN where the engine does not stop, as if that could be its cure', () => {
    const unstoppable = ({ kase }: Page) => kase.complaint.id === 'will-not-stop'
    const toRun = ({ card }: Page) =>
      (card.answers ?? []).some(({ mend }) => mend && /\bRUN\b|fully home/.test(mend.says))
    expect(pages.filter((page) => !unstoppable(page) && toRun(page)).length).toBeGreaterThan(3)
    expect(breaking(unstoppable, (page) => !toRun(page))).toEqual([])
    const asked = pages.filter((page) => unstoppable(page) && /^ask-controls/.test(page.card.id))
    expect(asked).toEqual([])
  })

  it('keeps an engine that is throttled up on lifted tracks or wheels below where its clutch takes hold', () => {
    const throttled = ({ card }: Page) =>
      card.engine === 'running' &&
      card.setups.some(({ id }) => id === 'safe-to-run') &&
      card.do.some((says) => /\bopen the throttle\b/i.test(says))
    const limited = (page: Page) => /below the speed at which the clutch/.test(steps(page))
    expect(breaking(throttled, limited)).toEqual([])
  })

  it('has what was clipped to a plug that is apart taken off before that is joined', () => {
    const clips = /^(engine stopped: |before you start the engine, )?clip\b/im
    const isClipped = ({ card }: Page) =>
      card.setups.some(({ id }) => id.startsWith('unplug ')) &&
      card.do.some((says) => sentencesIn(says).some((each) => clips.test(each)))
    const isOff = ({ card }: Page) => {
      const [, ...after] = card.do.join(' ').split(/\bclip the /i)
      return /\b(take|pull)\b[^.]*\b(clips|test lamp|probes?|meter)\b[^.]*\boff\b/i.test(
        after.join(' '),
      )
    }
    expect(breaking(isClipped, isOff)).toEqual([])
  })

  it('blows a flooded engine clear before dry plugs go in, off, grounded and covered', () => {
    const wet = pages.flatMap(({ kase, card }) =>
      (card.answers ?? []).flatMap(({ mend }) =>
        mend?.parts.includes('flooding')
          ? [
              {
                kase,
                texts: [mend.says, mend.phone],
                cautions: [...card.cautions, ...(mend.cautions ?? [])],
              },
            ]
          : [],
      ),
    )
    const suspected = shippedCases().flatMap((kase) => {
      const { mend } = kase.faults.get('flooding.wet') ?? {}
      return mend ? [{ kase, texts: [mend.phone.join(' ')], cautions: mend.cautions }] : []
    })
    expect(wet.length).toBeGreaterThan(3)
    expect(suspected.length).toBeGreaterThan(3)
    for (const { kase, texts, cautions } of [...wet, ...suspected]) {
      const [off, turn] = ['{off}', '{turn}'].map((name) =>
        fill(name, fillingsOf(kase.machine)).replace(/\.$/, '').toLowerCase(),
      ) as [string, string]
      for (const text of texts.map((each) => each.toLowerCase())) {
        const order = [
          off,
          'well away from',
          'rag',
          'never kicked back',
          turn,
          'rag',
          text.includes('screw each plug in') ? 'screw each plug in' : 'dry',
        ]
        let at = -1
        for (const words of order) {
          at = text.indexOf(words, at + 1)
          expect(at, `${words} in ${text}`).toBeGreaterThan(-1)
        }
      }
      const asked = ['ignition-kills', 'vapour-ignites', 'cranking-clear']
      expect(cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(asked))
    }
  })

  it('clears no plug by a wire that is read with its plugs apart', () => {
    const endToEnd = ({ card }: Page) => card.id.startsWith('wire-end-to-end.')
    const says = /halves of a plug touch each other is not in it/
    expect(breaking(endToEnd, ({ card }) => says.test(card.why))).toEqual([])
    const rows = pages.filter(endToEnd).flatMap(({ kase: { model }, card }) => {
      const check = model.checks.find(({ id }) => id === card.id)
      const corroded = model.cutSets.findIndex(
        ({ faults }) => faults.join() === `${card.part}.corroded`,
      )
      const row = corroded < 0 ? undefined : check?.chances[corroded]
      return row ? [row[card.outcomes.indexOf('in range')]!] : []
    })
    expect(rows.length).toBeGreaterThan(3)
    expect(Math.min(...rows)).toBeGreaterThan(0.25)
  })

  it('has an engine that runs stopped before the check is over and hands go near', () => {
    const runs = ({ card }: Page) => card.engine === 'running' && !card.asked
    const goes =
      /\b(starts?|idle|run (it|the engine)|bring back the conditions|do (it|the same) (once more|twice|three times)|briskly)\b/gi
    const rule = (page: Page) => {
      const said = steps(page)
      const gone = [...said.matchAll(goes)].at(-1)?.index ?? -1
      const { off } = page.kase.machine.stop!
      return (
        /\bstop (it|the engine)\b|engine stopped/i.test(said.slice(gone)) ||
        said.lastIndexOf(off) > gone
      )
    }
    expect(breaking(runs, rule)).toEqual([])
  })

  it('waits at a charged igniter before and after an engine that runs, where it has hands on its pins', () => {
    const live = ({ card }: Page) =>
      card.engine === 'running' && card.cautions.some(({ id }) => id === 'charged-capacitor')
    const rule = ({ card }: Page) => {
      const first = card.do.findIndex((step) => /five minutes after it last turned/i.test(step))
      const later = card.do.slice(2).join(' ')
      return first >= 0 && first < 2 && /five minutes|once all is cool/i.test(later)
    }
    expect(breaking(live, rule)).toEqual([])
  })

  it('waits before hands are on clips that carry the pulse of an igniter', () => {
    const clipped = (page: Page) =>
      hasIgniter(page) &&
      /^pulse-/.test(page.card.id) &&
      /clip the adaptor to .*harness side/i.test(steps(page))
    const handled = ({ card }: Page) =>
      card.do.filter((says) => /\b(exchange|take) the( two)? clips\b/i.test(says))
    const waits = (page: Page) =>
      handled(page).length > 0 && handled(page).every((says) => /wait five minutes/i.test(says))
    expect(breaking(clipped, waits)).toEqual([])
  })

  it('has in its minutes what it waits for after it has turned the engine itself', () => {
    const later = ({ card }: Page) => card.do.slice(2).join(' ')
    const turnsAndWaits = (page: Page) =>
      page.card.engine !== 'stopped' && /wait five minutes/i.test(later(page))
    expect(breaking(turnsAndWaits, ({ card }) => card.minutes > 5)).toEqual([])
    const unplugged = pages.filter(({ card }) => card.id === 'spark-stop-unplugged')
    const { minutes } = shippedKnowledge().checkKinds.get('spark-stop-unplugged')!
    expect(new Set(unplugged.map(hasIgniter))).toEqual(new Set([true, false]))
    for (const page of unplugged)
      expect(page.card.minutes, named(page)).toBe(minutes + (hasIgniter(page) ? 5 : 0))
  })

  it('has looked at first what its own steps may cure', () => {
    const screwsHome = ({ card }: Page) =>
      card.engine === 'stopped' &&
      /\bscrew [^.]*\b(back (on|into)|down again)\b/i.test(card.do.join(' '))
    const first = ({ card }: Page) => {
      const undone = card.do.findIndex((step) => /^(un)?screw|twist it off|lift it off/i.test(step))
      const warned = card.do.findIndex((step) => step.includes('may be the whole cure'))
      const told = !card.owner.fit || card.phone.some((says) => /^feel first/i.test(says))
      return warned >= 0 && warned < undone && told
    }
    expect(breaking(screwsHome, first)).toEqual([])
  })

  it('asks the spark to jump as far as the sheet of the machine says, and no further', () => {
    const asks = ({ card }: Page) => card.id.includes('-strength')
    const onTester = ({ card }: Page) => card.id.startsWith('spark-on-tester')
    const setTo = (page: Page) => steps(page).includes(`set to ${page.kase.machine.sparkGap.mm} mm`)
    expect(breaking(onTester, setTo)).toEqual([])
    const rule = (page: Page) => {
      const far = `${page.kase.machine.sparkGap.mm} mm`
      const answers = (page.card.answers ?? []).map(({ says }) => says).join(' ')
      return (
        steps(page).includes(far) &&
        page.card.phone.join(' ').includes(far) &&
        answers.includes(far)
      )
    }
    const strengths = (page: Page) => asks(page) && page.card.measurand === undefined
    expect(breaking(strengths, rule)).toEqual([])
    const gaps = new Set(pages.filter(strengths).map(({ kase }) => kase.machine.sparkGap.mm))
    expect(gaps.size).toBeGreaterThan(1)
  })

  it('has the controls at RUN for the pull alone, and at OFF again after it', () => {
    const atRest = ({ card }: Page) =>
      card.engine === 'cranking' && card.setups.every(({ undo }) => undo)
    const goesToRun = (page: Page) =>
      atRest(page) && steps(page).includes(page.kase.machine.stop!.run)
    const rule = (page: Page) =>
      steps(page).lastIndexOf(page.kase.machine.stop!.off) >
      steps(page).lastIndexOf(page.kase.machine.stop!.run)
    expect(breaking(goesToRun, rule)).toEqual([])
  })

  it('lets nobody handle a cap, a lead or a plug of a spark with the controls at RUN', () => {
    const touches = ({ card }: Page) => !card.loose && card.engine !== 'stopped'
    expect(breaking(touches, (page) => handledAtRun(page).length === 0)).toEqual([])
    const bench = ({ card }: Page) => card.engine === 'stopped' && handles.test(card.do.join(' '))
    expect(breaking(bench, (page) => handledAtRun(page).length === 0)).toEqual([])
  })

  it('speaks of a charged igniter only where a machine has one', () => {
    const warns = ({ card }: Page) => card.cautions.some(({ id }) => id === 'charged-capacitor')
    const stores = ({ kase }: Page) => kase.machine.parts.some(({ role }) => role === 'igniter')
    expect(breaking(warns, stores)).toEqual([])
    const isStop = ({ card }: Page) => card.setups.some(({ id }) => id === 'stop-circuit-unplugged')
    expect(breaking((page) => isStop(page) && stores(page), warns)).toEqual([])
  })

  it('asks for the puller wherever the flywheel has to come off', () => {
    const comesOff = (page: Page) => /press the flywheel off its taper/.test(readied(page))
    const hasPuller = ({ card }: Page) => card.tools.some(({ id }) => id === 'flywheel-puller')
    expect(breaking(comesOff, hasPuller)).toEqual([])
  })

  it('says where the switch stands once rope starter and fan cover are back', () => {
    const undone = new Map(
      pages.flatMap(({ card }) => card.setups.map(({ id, undo }) => [id, undo?.do] as const)),
    )
    expect(undone.get('access recoil-starter')).toMatch(/at OFF, draw the rope out slowly once/)
    expect(undone.get('flywheel-bare')).toMatch(/at OFF\s+until a step asks for RUN\.$/)
  })

  it('takes the ground lead off a battery before hands go to a bare flywheel', () => {
    const isBare = ({ kase, card }: Page) =>
      card.setups.some(({ id }) => id === 'flywheel-bare') &&
      kase.machine.parts.some(({ role }) => role === 'battery')
    const rule = (page: Page) => /ground lead off the battery/i.test(readied(page))
    expect(breaking(isBare, rule)).toEqual([])
  })

  it('has every cap on its plug for a hot run, and the engine die by itself', () => {
    const hot = ({ card }: Page) => card.setups.some(({ id }) => id === 'run-until-hot')
    const rule = (page: Page) =>
      /Take testers and spare plugs out.*every cap on its own plug/s.test(readied(page)) &&
      /: it dies by itself, or a cylinder drops out.*heat soak in.*at RUN/s.test(readied(page))
    expect(breaking(hot, rule)).toEqual([])
    const dead = (page: Page) => hot(page) && / dead hot/.test(page.card.title)
    expect(breaking(dead, (page) => /It has just failed hot/.test(steps(page)))).toEqual([])
  })

  it('makes ready what it cannot be run without before it is run hot, and takes covers off after that', () => {
    const places = ({ kase, card }: Page) => {
      const at = (is: (id: string) => boolean) => card.setups.findIndex(({ id }) => is(id))
      const serves = (id: string) =>
        kase.machine.access[id.replace('access ', '')]?.for?.includes('run-until-hot') ?? false
      return {
        run: at((id) => id === 'run-until-hot'),
        served: at(serves),
        cover: at((id) => id.startsWith('access ') && !serves(id)),
      }
    }
    const hot = (page: Page) => places(page).run >= 0
    const served = (page: Page) => hot(page) && places(page).served >= 0
    expect(breaking(served, (page) => places(page).served < places(page).run)).toEqual([])
    const covered = (page: Page) => hot(page) && places(page).cover >= 0
    expect(breaking(covered, (page) => places(page).cover > places(page).run)).toEqual([])
  })

  it('marks no pin where a step says that the clip must not go to one', () => {
    const warns = (page: Page) => /never to a pin of its plug/.test(steps(page))
    expect(breaking(warns, ({ card }) => card.spot === undefined)).toEqual([])
  })

  it('looks while it is pulled, and waits before the stop wire is joined as before it is parted', () => {
    const shades = (page: Page) => /Shade the tester/.test(steps(page))
    const before = (page: Page) => /Shade the tester.*briskly three times/s.test(steps(page))
    expect(breaking(shades, before)).toEqual([])
    // A module keeps no charge, and neither do points: nobody waits there for an igniter that is not there.
    const joins = (page: Page) =>
      hasIgniter(page) && page.card.setups.some(({ id }) => id === 'stop-circuit-unplugged')
    const waits = ({ card }: Page) =>
      card.setups.some(({ undo }) => /^Wait five minutes.*Join the stop wire/s.test(undo?.do ?? ''))
    expect(breaking(joins, waits)).toEqual([])
  })

  it('takes off what lies over the spark plugs before one comes out, or its cap off', () => {
    const covers = ({ kase }: Page) =>
      kase.machine.parts.filter(({ role }) => role === 'plug').flatMap(({ access = [] }) => access)
    const hands = (page: Page) =>
      !page.card.asked &&
      covers(page).length > 0 &&
      /\b(un)?screw[^.]* plugs?\b|new plug|(?<!tank )caps? off|pull off the caps|drop of water/i.test(
        all(page),
      )
    const rule = (page: Page) =>
      covers(page).every((cover) => page.card.setups.some(({ id }) => id === `access ${cover}`))
    expect(breaking(hands, rule)).toEqual([])
  })

  it('enters the first reading before the pins are cleaned', () => {
    const cleans = (page: Page) => /clean the pins/.test(steps(page))
    const rule = (page: Page) =>
      /enter (that first, as a take of its own|all three so first)\. Then clean/.test(steps(page))
    expect(breaking(cleans, rule)).toEqual([])
  })

  it('speaks of no other cap, plug or lamp as a matter of course where there may be none', () => {
    const single = ({ kase }: Page) => kase.machine.outputs.length === 1
    const rule = (page: Page) => !/every other cap|the other plugs|the other cap\b/i.test(all(page))
    expect(breaking(single, rule)).toEqual([])
    const stopWires = ({ card }: Page) => card.part === 'wires-stop'
    expect(breaking(stopWires, (page) => !/lamp that hangs on it\./.test(all(page)))).toEqual([])
  })

  it('leaves no brace and no stray full stop in any text', () => {
    const rule = (page: Page) =>
      !/[{}]|(^|\s)\.|\.\./.test([page.card.title, all(page), ...page.card.phone].join(' '))
    expect(breaking(() => true, rule)).toEqual([])
  })

  it('warns of ice wherever water is misted', () => {
    const mists = (page: Page) => /\bmist\b/i.test(all(page))
    const rule = ({ card }: Page) => card.cautions.some(({ id }) => id === 'mist-freezes')
    expect(breaking(mists, rule)).toEqual([])
  })

  it('puts the old part back after every trial with another one, whatever came of it', () => {
    const tries = ({ card }: Page) => /^(new-plug|known-good-(?!lamp))/.test(card.id)
    const rule = (page: Page) =>
      /put the (old|machine's own) .*back in.*whatever came of it/i.test(steps(page))
    expect(breaking(tries, rule)).toEqual([])
  })

  it('never asks to hold a live wire, nor puts the last clamp on a battery', () => {
    const rule = (page: Page) =>
      !/hold the free end|dark cover|to your ear|your thumb/i.test(
        `${all(page)} ${page.card.phone.join(' ')}`,
      )
    expect(breaking(() => true, rule)).toEqual([])
    const jumps = pages.find(({ card }) => card.id.startsWith('jump-start'))!
    expect(steps(jumps)).toMatch(
      /Black clamp last, on bright bare metal of the engine.*never on the battery/,
    )
  })
})

describe('a step about controls', () => {
  it('is left out where the sheet has none', () => {
    expect(fill('{run}. Hands off.', {})).toBe('Hands off.')
    expect(fill('Clip it on. {run}. Hands off.', {})).toBe('Clip it on. Hands off.')
    expect(fill('{run}.', {})).toBe('')
  })
})

describe('a proof', () => {
  const { partKinds, complaints } = shippedKnowledge()
  const proofs = [...partKinds.values(), ...complaints.values()].map(({ prove }) => prove)

  it('uses a tester only while the engine is cranked, and starts it only at the end', () => {
    expect(proofs.length).toBeGreaterThan(40)
    const wrong = proofs.filter(
      ({ stopped = '', cranking = '', running = '' }) =>
        /tester|start the engine|run it/i.test(stopped) ||
        /start the engine|run it/i.test(cranking) ||
        /on a tester/i.test(running),
    )
    expect(wrong).toEqual([])
  })

  it('lets heat soak in for one length of time, in set-ups, checks, proofs and trials alike', () => {
    const said = pages.flatMap(({ kase: { complaint }, card }) => [
      ...Object.values(complaint.prove),
      ...(complaint.home.trial ?? []),
      ...card.setups.map((setup) => setup.do),
      ...card.do,
      card.phone,
    ])
    const waits = said
      .flat()
      .flatMap((text) => [
        ...text.matchAll(
          /\bhot\b[^:]*?\b(?:wait|leave it|stand for|soak in for)\s+(\w+)\s+minutes/gi,
        ),
      ])
    expect(waits.length).toBeGreaterThan(4)
    expect([...new Set(waits.map(([, minutes]) => minutes))]).toEqual(['ten'])
  })
})
