import type { MeterRange } from '../doubt/meter.ts'
import type { Quantity } from '../reading/quantity.ts'
import type { Adaptor } from './adaptor.ts'
import type { Speed } from './speed.ts'
import type { Material, Temperature } from './temperature.ts'

/** Under what circumstances a part was read, and those its limits hold under. */
export interface Circumstances {
  readonly quantity: Quantity
  /** The meter's ranges for what was set: ohms, AC volts, DC volts with or without an adaptor. */
  readonly ranges: readonly MeterRange[]
  readonly material: Material
  /** Ω shown with the probes held together; left out where the leads were not zeroed. */
  readonly zero?: number
  readonly partTemperature: Temperature
  readonly limitsTemperature: Temperature
  readonly speed?: Speed
  /** Where a speed that nobody measured is taken to lie, as of `toLimitsSpeed`; left out: anywhere. */
  readonly place?: number
  readonly limitsRpm?: number
  readonly adaptor?: Adaptor
}
