import type { ArrangementName, Design } from '#shared/bearing/arrangements.ts'
import type { Openings } from '#shared/bearing/assumed-sizes.ts'
import { DIMENSION_SYMBOLS, type Dimension, ruleText } from '#shared/bearing/dimensions.ts'
import { finerThanRule } from '#src/words/by-caliper.ts'
import { dimensionName } from '#src/words/dimension-names.ts'
import { exactFigure } from '#src/words/figure.ts'
import { BEARING } from '#src/words/kiosk/bearing.ts'
import { signMeanings, signOfSize } from '#src/words/standing.ts'
import { TERMS } from '#src/words/terms.ts'

/** Every size of a bearing, those that are cut to as they are on the lathe. */
export function SizesTable({
  design,
  arrangement,
  openings = design.bearing.resolved,
}: {
  readonly design: Design
  readonly arrangement: ArrangementName
  readonly openings?: Openings | undefined
}) {
  const { resolved } = design.bearing
  const { units } = resolved.input
  const rows: readonly Dimension[] = design.dimensions
  const meanings = signMeanings(rows.map(({ key }) => signOfSize(key, openings)))
  return (
    <table id="sizes-to-cut">
      <caption>{BEARING.sizes}</caption>
      <thead>
        <tr>
          <th scope="colgroup" colSpan={2}>
            {BEARING.size}
          </th>
          <th scope="col">{BEARING.onTheRule}</th>
          <th scope="col">{BEARING.exact}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            <td>{DIMENSION_SYMBOLS[row.key]}</td>
            <th scope="row">{dimensionName(row.key, TERMS[arrangement])}</th>
            <td>
              {isFollowing(row)
                ? BEARING.follows
                : (ruleText(row, resolved) ?? finerThanRule(DIMENSION_SYMBOLS[row.key]))}
            </td>
            <td>
              {exactFigure(row.cutTo ?? row.value, units)}
              {signOfSize(row.key, openings)}
            </td>
          </tr>
        ))}
      </tbody>
      {meanings.length > 0 && (
        <tfoot>
          <tr>
            <td colSpan={4}>{meanings.join(', ')}</td>
          </tr>
        </tfoot>
      )}
    </table>
  )
}

/** The circle of the balls, which other sizes leave them: no tool touches it. The groove of a plate is cut on it. */
const isFollowing = ({ key, cutTo }: Dimension): boolean => key === 'pitchDiameter' && cutTo === undefined
