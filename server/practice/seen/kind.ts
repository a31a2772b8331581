import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { CheckKind } from '../../knowledge/schema/check-kind.ts'

/** The kind that a check was made from: its name up to the first dot. */
export const kindOf = ({ checkKinds }: Knowledge, { id }: Pick<CheckCard, 'id'>): CheckKind =>
  named(checkKinds, id.split('.')[0] ?? id)
