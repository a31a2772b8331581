import { partsIn } from '../../../server/practice/world/sheet.ts'
import { backInPlace, type Change, caps, doing, having, plugs, remove } from '../world/standing.ts'
import type { Phrase } from './apart.ts'
import {
  all,
  boxPlugs,
  coilPlugs,
  injectorPlugs,
  join,
  lampSwitchPlugs,
  outputsMeant,
  plugOf,
  plugOfRole,
  type Where,
} from './where.ts'

const own = (where: Where, ...fields: ('leadOff' | 'capOff')[]): Change =>
  doing(fields.map((field) => remove(field, ...outputsMeant(where))))

const inPlace = ({ site }: Where, role: string): Change =>
  backInPlace(partsIn(site.world.machine, role).map(({ id }) => id))

const noStandIns: Change = having({ standIns: new Set() })

/** What was so when the steps began is so again. */
const asBefore =
  (field: 'apart' | 'off', { site }: Where): Change =>
  (standing) => ({ ...standing, [field]: site.standing[field] })

/** Words that put something back once it was read. Before that they are not heeded. */
export const puttingBack: readonly Phrase[] = [
  [
    /(switch|key) at run, tether on again|put it back as for work/i,
    () => having({ stopSwitch: 'RUN', tether: 'on' }),
  ],
  [
    /^before it is run hot once more, take testers .* push every cap on its own plug/i,
    (where) => caps('on its plug', ...all(where)),
  ],
  // Only where the sheet has a key: there is a battery then, and no other machine has one.
  [/^turn the key back to off/i, () => having({ stopSwitch: 'OFF' })],
  [/^set it for work again/i, () => having({ letGo: new Set() })],
  [/\bstop it\b[^.]*: [^.]*\bat off\b/i, () => having({ stopSwitch: 'OFF' })],
  [/\b(stop switch|key switch|key) at off again/i, () => having({ stopSwitch: 'OFF' })],
  [/^put (the|a) tether on again/i, () => having({ tether: 'on' })],
  [/^if you took a lamp out, put it back/i, () => having({ lampsOut: false })],
  [/plug the stop wire in again/i, () => join('stop-plug')],
  [
    /plug the switch in again|join the switch again/i,
    (where) => doing([join(...lampSwitchPlugs(where)), having({ jumper: null })]),
  ],
  [
    /push the cap back on its (own )?plug|push the cap on until|push (the cap|it) on its plug|push its cap on until/i,
    (where) => caps('on its plug', ...outputsMeant(where)),
  ],
  [/push each cap (on|back on its own plug) until/i, (where) => caps('on its plug', ...all(where))],
  [/screw the (spark )?plug back in/i, (where) => plugs('in', ...outputsMeant(where))],
  [/screw (every spark plug|both spark plugs) back in/i, (where) => plugs('in', ...all(where))],
  [
    /screw the cap back on its lead|screw every lead and cap back|screw the lead back into coil and cap/i,
    (where) => own(where, 'leadOff', 'capOff'),
  ],
  [/put every lamp that is whole back|put back every lamp/i, () => having({ lampsOut: false })],
  [/machine's own lamp is whole, put it back/i, () => having({ lampsOut: false, goodLamp: false })],
  [/push the (main )?fuse back/i, () => having({ fuseOut: false })],
  [/put the ground lead back on the battery/i, () => having({ batteryGroundOff: false })],
  [/join both plugs of the .* again/i, () => join('rectifier-plug', 'output-plug')],
  [/join the plug of the exciters again/i, (where) => join(plugOfRole(where, 'exciter'))],
  [/put back all that you took off to get there/i, (where) => asBefore('off', where)],
  [
    /join again whatever else you unplugged|join what you unplugged/i,
    (where) => asBefore('apart', where),
  ],
  [
    /push the plug on (its |the .*)injector again|join the injector again/i,
    (where) => join(...injectorPlugs(where)),
  ],
  [/join the plug of the pump again/i, (where) => join(plugOfRole(where, 'pump'))],
  [/join the plug of the winding again/i, (where) => join(plugOf(where, where.part))],
  [/push the plug on the regulator again/i, () => join('regulator-plug')],
  [/push the .* together again/i, (where) => join(where.part)],
  [/take the jumper lead off/i, () => having({ jumper: null })],
  [
    /put the machine's own coil back in/i,
    (where) => doing([noStandIns, join(...coilPlugs(where))]),
  ],
  [
    /put the machine's own igniter back in/i,
    (where) =>
      doing([noStandIns, join(...boxPlugs(where, 'igniter').filter((p) => p !== 'stop-plug'))]),
  ],
  [/put the machine's own (module|condenser) back in/i, () => noStandIns],
  [
    /put the machine's own rectifier-regulator back in/i,
    () => doing([noStandIns, join('rectifier-plug', 'output-plug')]),
  ],
  [/put the machine's own regulator back in/i, () => doing([noStandIns, join('regulator-plug')])],
  [
    /put the machine's own injection unit back in/i,
    (where) => doing([noStandIns, join(...boxPlugs(where, 'pump-driver'))]),
  ],
  [/take the clamps off again/i, () => noStandIns],
  [
    /each coil back in its own place/i,
    (where) => doing([inPlace(where, 'coil'), join(...coilPlugs(where, all(where)))]),
  ],
  [/each cap back on its own lead/i, (where) => inPlace(where, 'cap')],
  [
    /each plug back in its own cylinder/i,
    (where) => doing([inPlace(where, 'plug'), plugs('in', ...all(where))]),
  ],
  [/take the new plug out of the cap again/i, (where) => remove('newPlug', ...outputsMeant(where))],
  [/put the old plug back in/i, (where) => remove('newPlug', ...outputsMeant(where))],
]
