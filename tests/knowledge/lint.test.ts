import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { jsonSchemas } from '../../server/knowledge/command.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { changedTrees } from '../support/changed-trees.ts'
import { shippedTrees } from '../support/knowledge.ts'

const { saidAfter } = changedTrees()

const afterTop = '      - { gate: all-outputs-dead }\n'

/** Instead of that, with as many more gates below the top in a row, each twice above the next. */
function doubling(count: number): string {
  const gates = Array.from({ length: count }, (_, i) => {
    const below = i === count - 1 ? 'no-supply' : `double-${i + 1}`
    return `  double-${i}: { says: It doubles, or: [{ gate: ${below} }, { gate: ${below} }] }\n`
  })
  return `${afterTop}      - { gate: double-0 }\n${gates.join('')}`
}

describe('the lint of the knowledge', () => {
  it('finds nothing wrong with what ships', () => {
    expect(() => loadKnowledge(shippedTrees)).not.toThrow()
  })

  it.each([
    ['text that is no YAML', 'parts/pump.yaml', 'kind: pump', 'kind: [pump', /not YAML/],
    [
      'a key nobody knows',
      'parts/pump.yaml',
      'name: ',
      'nmae: ',
      /the file: nothing here is called nmae; look for its name in the guide, or leave it out/,
      'kind: pump',
    ],
    [
      'readings of diodes that tell no answer there is',
      'checks/diode-test.yaml',
      'shorted: one-shorted }',
      'shorted: dead }',
      /it has no answer called dead/,
    ],
    [
      'a key that is missing',
      'complaints/no-spark.yaml',
      '  share: ',
      '  shore: ',
      /elsewhere\.share: this is missing; write a number here/,
      'elsewhere:',
    ],
    [
      'words where a list belongs',
      'checks/ask-before.yaml',
      'tools: []',
      'tools: none',
      /tools: write a list here/,
    ],
    [
      'a value where names with values belong',
      'machines/clipwell-1m.yaml',
      'sparkGap: { mm: 6, source: invented for the demo }',
      'sparkGap: 6 mm',
      /sparkGap: write names with their values here: mm, source$/,
    ],
    [
      'one place where two belong',
      'machines/clipwell-1m.yaml',
      'touch: [the magnet of the flywheel, the poles of the module]',
      'touch: [the magnet of the flywheel]',
      /reach\.0\.touch: write exactly 2 here$/,
    ],
    [
      'words where a list of two belongs, which is said once',
      'machines/clipwell-1m.yaml',
      'touch: [the magnet of the flywheel, the poles of the module]',
      'touch: the magnet and the module',
      /^\S+: parts\.\d+\.reach\.0\.touch: write a list here, in \[ \] or with a - before each$/,
    ],
    [
      'a word of the trade with a drawing that nobody made',
      'glossary.yaml',
      'picture: flywheel',
      'picture: fly-wheel',
      /picture: write one of winding, /,
    ],
    [
      'a word of the trade that leads to one that is not there',
      'glossary.yaml',
      'see: [flywheel-key, stator]',
      'see: [flywheel-key, stater]',
      /no word is called stater/,
    ],
    [
      'a word of the trade for a kind of part that is not there',
      'glossary.yaml',
      'kinds: [flywheel-key]',
      'kinds: [flywheel-kay]',
      /no part kind is called flywheel-kay/,
    ],
    [
      'what an old hand says with a name in braces that nobody knows',
      'checks/ask-before.yaml',
      '  Ask before you touch anything',
      '  Ask the {rider} before you touch anything',
      /\{rider\} is neither a placeholder nor a role/,
    ],
    [
      'an engine that does nothing known',
      'checks/ask-before.yaml',
      'engine: stopped',
      'engine: standing',
      /engine: write one of stopped, cranking, running/,
    ],
    [
      'a circuit with a pin that its plug has not',
      'circuits/pedlar-1c.yaml',
      '[igniter-plug, 5, coil-plug, 1]',
      '[igniter-plug, 5, coil-plug, 9]',
      /coil-plug has no pin 9/,
    ],
    [
      'a circuit with a part that its machine has not',
      'circuits/pedlar-1c.yaml',
      'exciter: [magneto-plug, 1, 2]',
      'excitor: [magneto-plug, 1, 2]',
      /excitor/,
      'exciter: [magneto-plug, 1, 2]',
    ],
    [
      'a charger with a winding that its machine has not',
      'circuits/ferrymere-3t.yaml',
      'winding: charging, plug',
      'winding: chargin, plug',
      /no part is called chargin: did you mean charging/,
    ],
    [
      'a failure that adds more at least than at most',
      'parts/wiring.yaml',
      'does: { adds: { low: 1 Ω, high: 10 MΩ } }',
      'does: { adds: { low: 10 MΩ, high: 1 Ω } }',
      /low is above high/,
    ],
    ['a rate below zero', 'parts/winding.yaml', 'typical: 8', 'typical: -8', /rate\.typical/],
    [
      'a file that is called otherwise',
      'meters/hand.yaml',
      'id: hand',
      'id: foot',
      /holds foot, so call it foot\.yaml/,
    ],
    [
      'chances that do not sum to 1',
      'parts/winding.yaml',
      'resistance: { open: 0.96, high: 0.02, in range: 0.02 }',
      'resistance: { open: 0.9, high: 0.02, in range: 0.02 }',
      /sum to 0\.94; make them sum to 1/,
    ],
    [
      'a role with a slip in it, with the one that was meant',
      'machines/pedlar-1c.yaml',
      'role: exciter\n',
      'role: excitor\n',
      /no role is called excitor: did you mean exciter\?/,
    ],
    [
      'a role that nobody declared, with those that there are',
      'machines/pedlar-1c.yaml',
      'role: exciter\n',
      'role: dynamo\n',
      /no role is called dynamo: the nearest are [a-z, -]+, and there are \d+ more/,
    ],
    [
      'a part that cannot play its role',
      'machines/pedlar-1c.yaml',
      'role: exciter\n',
      'role: pickup\n',
      /exciter: the role pickup is played by pickup, and this is a winding/,
      'kind: winding',
    ],
    [
      'a role in one of two lists of needs',
      'complaints/no-spark.yaml',
      '[module], [primary,',
      '[modul], [primary,',
      /no role is called modul: did you mean module\?/,
      'needs:',
    ],
    [
      'a rate for a role that nobody declared',
      'parts/winding.yaml',
      'roles: { exciter: 24,',
      'roles: { excitr: 24,',
      /no role is called excitr: did you mean exciter\?/,
    ],
    [
      'a cover over a part that the machine has not',
      'machines/pedlar-1c.yaml',
      'where: below the engine cover, on the frame\n    access: [engine-cover]',
      'where: below the engine cover, on the frame\n    access: [engine-hood]',
      /no access is called engine-hood: there is engine-cover, /,
      'access: [engine-cover]\n    limits:\n      pulse',
    ],
    [
      'an outcome that the quantity lacks',
      'parts/winding.yaml',
      'resistance: { open: 0.96, high: 0.02, in range: 0.02 }',
      'resistance: { opne: 0.96, high: 0.02, in range: 0.02 }',
      /no outcome is called "opne": there is short, low/,
    ],
    [
      'limits upside down',
      'machines/larkfell-2i.yaml',
      'resistance: { low: 310 Ω, high: 420 Ω',
      'resistance: { low: 420 Ω, high: 310 Ω',
      /upside down: low is 420 Ω, high is 310 Ω/,
    ],
    [
      'a unit that does not fit',
      'machines/larkfell-2i.yaml',
      'resistance: { low: 310 Ω, high: 420 Ω',
      'resistance: { low: 310 V, high: 420 V',
      /resistance is given in Ω/,
    ],
    [
      'a speed where none counts',
      'machines/larkfell-2i.yaml',
      'resistance: { low: 310 Ω, high: 420 Ω',
      'resistance: { low: 310 Ω, high: 420 Ω, rpm: 500',
      /resistance is compared as it is read, whatever the speed: leave out rpm/,
    ],
    [
      'a caution for a quantity that nobody wrote',
      'cautions.yaml',
      'quantity: [peak-voltage]',
      'quantity: [peek-voltage]',
      /no quantity is called peek-voltage: did you mean peak-voltage\?/,
    ],
    [
      'a pin that is not there',
      'machines/larkfell-2i.yaml',
      'pins: [1, 2]',
      'pins: [1, 99]',
      /has no pin 99/,
    ],
    [
      'a source of power that is no part',
      'machines/larkfell-2i.yaml',
      'fedBy: pump-winding',
      'fedBy: pump-windign',
      /pump: no part is called pump-windign/,
    ],
    [
      'what is usual in a unit that does not fit',
      'parts/pickup.yaml',
      'usual: { low: 50 Ω, high: 500 Ω',
      'usual: { low: 50 V, high: 500 Ω',
      /write “50 V” in Ω/,
    ],
    [
      'what is usual upside down',
      'parts/pickup.yaml',
      'usual: { low: 50 Ω, high: 500 Ω',
      'usual: { low: 500 Ω, high: 50 Ω',
      /usual is upside down: low is 500 Ω, high is 50 Ω/,
    ],
    [
      'what is usual of something that is looked at',
      'parts/pickup.yaml',
      'gap: { quantity: answers,',
      'gap: { quantity: answers, usual: { low: 1 Ω, high: 2 Ω, source: from memory },',
      /gap is looked at, not measured: leave out usual/,
    ],
    [
      'one pin named twice',
      'machines/larkfell-2i.yaml',
      'pins: [8, 9]',
      'pins: [8, 8]',
      /name two pins, not one of them twice/,
    ],
    [
      'two parts that are read at the same pins',
      'machines/larkfell-2i.yaml',
      '- { at: igniter-plug, pins: [10, 11], for: [primary-resistance]',
      '- { at: igniter-plug, pins: [9, 8], for: [primary-resistance]',
      /coil-right and coil-left are both read for primary-resistance at pins 9 and 8 of the igniter plug, and neither/,
    ],
    [
      'a colour that IEC 60757 does not have',
      'machines/larkfell-2i.yaml',
      'wire: [RD, BK]',
      'wire: [RD, XX]',
      /no colour is called XX/,
    ],
    [
      'a part kind nobody wrote',
      'machines/pedlar-1c.yaml',
      'kind: winding',
      'kind: windign',
      /no part kind is called windign/,
    ],
    [
      'a check without the caution of its engine and set-up',
      'checks/spark-on-tester.yaml',
      ', vapour-ignites',
      '',
      /add vapour-ignites: cautions\.yaml:\d+ asks for it where engine is cranking and setups has tester-fitted$/,
      'cautions:',
    ],
    [
      'a check without the caution of what it measures',
      'checks/winding-resistance.yaml',
      'cautions: [ohms-stopped, ',
      'cautions: [',
      /add ohms-stopped: cautions\.yaml:\d+ asks for it where engine is stopped and it measures resistance$/,
    ],
    [
      'a repair without the caution that a word of it asks for',
      'parts/flywheel.yaml',
      ', flywheel-off',
      '',
      /add flywheel-off: cautions\.yaml:\d+ asks for it where repair says "replace the flywheel"$/,
      'repair:',
    ],
    [
      'a proof of a repair without the caution of what the engine does',
      'parts/fuse.yaml',
      'cautions: [exhaust, moving-parts]',
      'cautions: [exhaust]',
      /add moving-parts: cautions\.yaml:\d+ asks for it where engine is running$/,
      'running:',
    ],
    [
      'a proof of a complaint without the caution that a word of it asks for',
      'complaints/will-not-stop.yaml',
      'cautions: [cannot-be-stopped, ',
      'cautions: [',
      /add cannot-be-stopped: cautions\.yaml:\d+ asks for it where prove, running, says "die at once"$/,
      'running:',
    ],
    [
      'a check without the caution that a word of its step asks for',
      'checks/igniter-ground-jumper.yaml',
      ', charged-capacitor',
      '',
      /add charged-capacitor: cautions\.yaml:\d+ asks for it where do says "igniter"$/,
      'cautions:',
    ],
    [
      'a check without the caution that a word of its set-up asks for',
      'checks/timing-mark.yaml',
      ', battery]',
      ']',
      /add battery: cautions\.yaml:\d+ asks for it where set-up timing-light-fitted says "battery"$/,
      'cautions:',
    ],
    [
      'a proof that says nothing',
      'parts/fuse.yaml',
      'prove:\n  running: >-\n    Run the engine',
      'prove: {}\nname2: >-\n    Run the engine',
      /say how it is proved: with the engine stopped, cranking or running/,
      'prove:',
    ],
    [
      'a group nobody wrote',
      'complaints/no-spark.yaml',
      'group: spark',
      'group: sparks',
      /no group is called sparks: did you mean spark\?/,
    ],
    [
      'a caution nobody wrote in a complaint',
      'complaints/will-not-stop.yaml',
      'cautions: [cannot-be-stopped, ',
      'cautions: [cannot-be-stoped, ',
      /no caution is called cannot-be-stoped/,
    ],
    [
      'a gate that is not there',
      'complaints/no-spark.yaml',
      '{ gate: no-supply }',
      '{ gate: no-suply }',
      /no gate is called no-suply/,
    ],
    [
      'a gate that nothing reaches',
      'complaints/no-spark.yaml',
      '      - { gate: flooded }\n',
      '',
      /nothing reaches gate flooded/,
      '  flooded:',
    ],
    [
      'a gate that leads back to itself',
      'complaints/no-spark.yaml',
      '      - { any: flooding }',
      '      - { gate: no-spark }',
      /gate flooded leads back to itself/,
    ],
    [
      'each under or',
      'complaints/no-spark.yaml',
      '{ any: flooding }',
      '{ each: flooding }',
      /write any, not each, under or/,
    ],
    [
      'more inputs wanted than a machine has',
      'complaints/no-spark.yaml',
      '    and:\n      - { each: output-dead }',
      '    atLeast: { k: 2, of: [{ each: output-dead }] }',
      /on pedlar-1c gate all-outputs-dead needs 2 inputs and has 1, .*: lower k/,
      '  all-outputs-dead:',
    ],
    [
      'a tree that grows by sharing until no page can show it',
      'complaints/no-spark.yaml',
      afterTop,
      doubling(12),
      /on larkfell-2i gate double-\d+ has [\d,]+ branches.* at most 5,000 can be shown/,
    ],
    [
      'gates too deep for a page',
      'complaints/no-spark.yaml',
      afterTop,
      doubling(52),
      /gate double-\d+ has more than 49 gates one below the other/,
    ],
    [
      'a set-up that nobody can put back',
      'setups.yaml',
      '    undo: nothing\n',
      '',
      /say how it is put back: do and minutes, or nothing, or fades/,
      '  safe-to-run:',
    ],
    [
      'a plug of the stop circuit that is not joined again',
      'machines/pedlar-1c.yaml',
      'plugs: [stop-plug, stop-switch-plug, tether-plug]',
      'plugs: [stop-switch-plug, tether-plug]',
      /with stop-plug apart the engine cannot be stopped: name it in stop/,
      '  stop-plug:',
    ],
    [
      'a check that has the stop circuit out of play and not apart',
      'checks/spark-stop-unplugged.yaml',
      'setups: [tester-fitted, stop-circuit-unplugged]',
      'setups: [tester-fitted]',
      /without stopped, nothing stops it: give it a set-up with stopOff/,
      'do:',
    ],
    [
      'a bridge over what stops the engine by opening, left on',
      'checks/spark-run-bridged.yaml',
      'setups: [tester-fitted, run-line-bridged]',
      'setups: [tester-fitted]',
      /without run-line-open, nothing stops it: give it a set-up with stopOff/,
      'do:',
    ],
    [
      'a step that bridges the run wire',
      'checks/spark-on-tester.yaml',
      "'{run}.'",
      'Bridge the run wire to ground.',
      /the step "Bridge the run wire" takes the stop circuit out of play/,
      'do:',
    ],
    [
      'a step that pulls the stop wire and leaves it',
      'checks/spark-on-tester.yaml',
      "'{run}.'",
      'Tether on. Unplug the stop wire.',
      /the step "Unplug the stop wire" takes the stop circuit out of play/,
      'do:',
    ],
    [
      'a part that is to be parted from all and does not say where it hangs',
      'machines/pedlar-1c.yaml',
      '    plugs: [coil-plug]\n',
      '',
      /coil: say in plugs which connectors it hangs on/,
      '  - id: coil\n',
    ],
    [
      'a set-up that lasts a while and never fades',
      'setups.yaml',
      '    undo: fades\n',
      '    undo: nothing\n',
      /only what fades lasts a while: write undo: fades, or remove lasts/,
    ],
    [
      'a question that needs a tool',
      'checks/ask-before.yaml',
      'tools: []',
      'tools: [torch]',
      /this check needs more than a question: remove asked/,
      'asked:',
    ],
    [
      'a check for complaints with a gate that none has',
      'checks/mist-running.yaml',
      'within: [wet-fault]',
      'within: [wet-falt]',
      /no gate is called wet-falt/,
      '  within:',
    ],
    [
      'a cause outside the tree at a gate that no output has',
      'complaints/one-cylinder-dead.yaml',
      'holds: cylinder-dead',
      'holds: harness-fault',
      /no gate per output is called harness-fault: the nearest are/,
      '  holds:',
    ],
    [
      'a row for causes outside the tree that is no row',
      'checks/drops-of-fuel.yaml',
      'elsewhere: { nothing: 0.75, coughs: 0.25 }',
      'elsewhere: { nothing: 0.75, coughs: 0.35 }',
      /about.elsewhere: the chances sum to 1.1; make them sum to 1/,
      '  elsewhere:',
    ],
    [
      'an answer of one output that is not offered there either',
      'checks/plugs-look.yaml',
      'onOne: all-bad',
      'onOne: one-bad',
      /one-bad: on one output it counts as "one-bad", which is not offered there: there is good, all-wet, all-bad/,
    ],
    [
      'an answer about a spark without its least spark',
      'checks/spark-strength.yaml',
      'spark: { far-and-blue: 0.75, short-or-thin: 0 }',
      'spark: { far-and-blue: 0.75 }',
      /spark: give every answer a least spark of its own, and one of them 0/,
    ],
    [
      'a spark for an answer that nobody can give',
      'checks/spark-strength.yaml',
      'spark: { far-and-blue: 0.75, short-or-thin: 0 }',
      'spark: { far-and-blue: 0.75, short-or-thin: 0, blue: 1 }',
      /spark: no outcome is called "blue": there is far-and-blue, short-or-thin/,
    ],
    [
      'more gates than anyone can read',
      'complaints/no-spark.yaml',
      afterTop,
      doubling(1000),
      /gates: write at most 1000 gates; split the complaint in two/,
      'gates:',
    ],
  ])('refuses %s with file, line and a sentence', (_, file, from, to, sentence, place = from) => {
    const { said, line } = saidAfter(file, from, to, place)
    expect(said).toMatch(sentence)
    const first = said.split('\n').find((each) => sentence.test(each))!
    const [where, at] = first.split(':')
    expect(where).toBe(file)
    // A whole entry may be named by its head, so the line may lie a few above the text itself.
    expect(Math.abs(Number(at) - line)).toBeLessThanOrEqual(8)
  })

  it('keeps the JSON Schemas for editors up to date', () => {
    const schemas = jsonSchemas()
    expect(schemas.length).toBeGreaterThan(5)
    for (const { file, text } of schemas) expect(readFileSync(file, 'utf8')).toBe(text)
  })
})
