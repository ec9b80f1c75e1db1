import { sql } from 'kysely'
import { sha256 } from '../../src/base/ids.ts'
import { columnsIn, type Within } from '../../src/store/contents.ts'
import { type TableName, tableNames } from '../../src/store/tables.ts'

/** Columns that refer to another table's row; every other column is filled by its type. */
const references: Readonly<Record<string, string>> = {
  pile_id: 'pile-id',
  flow_hash: 'flow_version-hash',
  account_id: 'account-id',
  who: 'account-id',
  sent_by: 'account-id',
  settled_by: 'account-id',
  undone_by: 'account-id',
  mail_id: 'mail-id',
  photo_id: 'photo-id',
  count_id: 'day_count-id',
}

/** The name of the photo that the filled rows tell of. */
export const filledPhoto = sha256('shirt')

/** Columns whose words are of a closed list, or refer to a row of their own table. */
const told: Readonly<Record<string, string | null>> = {
  'payment.undoes': null,
  'photo.removed_at': null,
  'photo.hash': filledPhoto,
  'erasure.what_hash': sha256('an id'),
  'erasure.what': 'pile',
  'erasure.by_whom': 'time',
}

async function isText({ db, dialect }: Within, table: string): Promise<ReadonlySet<string>> {
  const types =
    dialect === 'sqlite'
      ? sql<{
          name: string
        }>`select name from pragma_table_info(${table}) where lower(type) = 'text'`
      : sql<{ name: string }>`select column_name as name from information_schema.columns
          where table_schema = current_schema() and table_name = ${table} and data_type = 'text'`
  return new Set((await types.execute(db)).rows.map(({ name }) => name))
}

/** Puts one row into each table that is there, with something in each column, words of other scripts among them. */
export async function fillEveryTable(
  within: Within,
  names: readonly TableName[] = tableNames,
): Promise<void> {
  for (const table of names) {
    const text = await isText(within, table)
    const columns = await columnsIn(within, table)
    const row = Object.fromEntries(
      columns.map((column, i) => {
        const name = `${table}.${column}`
        if (Object.hasOwn(told, name)) return [column, told[name]]
        const known = Object.hasOwn(references, column) ? references[column]! : null
        if (known && known !== `${table}-${column}`) return [column, known]
        if (!text.has(column)) return [column, 1_700_000_000 + i]
        return [
          column,
          column === 'id' || column === 'hash' ? `${table}-${column}` : `Łu "${name}" 李\n`,
        ]
      }),
    )
    await within.db
      .insertInto(table)
      .values(row as never)
      .execute()
  }
}
