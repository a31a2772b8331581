import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { kindNameOf } from '../../knowledge/instantiate/check-names.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { CheckKind } from '../../knowledge/schema/check-kind.ts'

/** The kind that a check was made from. */
export const kindOf = ({ checkKinds }: Knowledge, { id }: Pick<CheckCard, 'id'>): CheckKind =>
  named(checkKinds, kindNameOf(id))
