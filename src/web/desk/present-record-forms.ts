import type { GarmentRecords } from '../../desk/garment-records.ts'
import { looks, peels, testResults } from '../../desk/test-log.ts'
import { bled, shrunk } from '../../desk/wash-record.ts'
import { sizes } from '../../garment/facts.ts'
import type { Language } from '../../words/words.ts'
import { custodyPaths } from './custody-paths.ts'
import type { RecordReader } from './present-record.ts'
import type { RecordField, RecordForm } from './view-record.ts'

/** A size as it is told in the intake; children's sizes that it does not name are called as on their labels. */
export const sizeWords = (size: string, { say, has }: Language): string =>
  has(`intake.size.options.${size}`) ? say(`intake.size.options.${size}`) : size

type Draft = Partial<Omit<RecordField, 'name' | 'value'>>

/** Makes the forms of one garment's page; what was typed into the one that was refused stands in it again. */
export function formsFor({ row, garment, interfacings }: GarmentRecords, reader: RecordReader) {
  const { language, refused, typed } = reader
  const { say } = language
  const postTo = custodyPaths.record(row.number, garment.n)
  const staffPost = custodyPaths.incident(row.number, garment.n)
  const sentAs = (act: string, record = '') =>
    refused !== null && typed('act') === act && (record === '' || typed('record') === record)

  const field = (act: string, name: string, draft: Draft = {}, value = ''): RecordField => ({
    name,
    label: draft.label ?? say(`records.fields.${name}`),
    hint: null,
    kind: 'line',
    options: [],
    required: false,
    ...draft,
    value: sentAs(act) ? typed(name) : value,
  })
  const note = (act: string) =>
    field(act, 'note', { kind: 'words', label: say('custody.field.note') })
  const said = (act: string, label: string, value = '') =>
    field(act, 'note', { kind: 'words', required: true, label }, value)
  const among = (act: string, name: string, options: readonly string[], words: string) =>
    field(act, name, {
      kind: 'choice',
      options: options.map((one) => ({ value: one, label: say(`${words}.${one}`) })),
    })
  const form = (
    act: string,
    fields: readonly RecordField[],
    { cautions = [] as readonly string[], photo = 'one' as RecordForm['photo'], to = postTo } = {},
  ): RecordForm => ({
    act,
    label: say(`records.acts.${act}`),
    postTo: to,
    cautions: cautions.map((one) => say(`records.cautions.${one}`)),
    fields,
    photo,
    open: sentAs(act),
  })

  return {
    picture: () => form('picture', []),
    ask: () => form('ask', [note('ask')], { photo: 'none' }),
    release: () => form('release', [note('release')], { cautions: ['blade'], photo: 'none' }),
    test: () =>
      form(
        'test',
        [
          among('test', 'interfacing', interfacings, 'trade.interfacing'),
          field('test', 'lot', { required: true }),
          field('test', 'sole', { kind: 'number', required: true, hint: say('records.sole_hint') }),
          field('test', 'seconds', { kind: 'number', required: true }),
          among('test', 'peel', peels, 'records.peels'),
          among('test', 'look', looks, 'records.looks'),
          among('test', 'result', testResults, 'records.results'),
          note('test'),
        ],
        { cautions: ['iron'] },
      ),
    found: () =>
      form(
        'found',
        [
          said('found', say('records.fields.thing')),
          field('found', 'where', { required: true }),
          field('found', 'place', { kind: 'place', required: true }),
        ],
        { cautions: ['sharp', 'fluids'] },
      ),
    wash: () =>
      form(
        'wash',
        [
          field('wash', 'how', { required: true }),
          field('wash', 'celsius', { kind: 'number' }),
          among('wash', 'bled', bled, 'records.bled'),
          among('wash', 'shrunk', shrunk, 'records.shrunk'),
          field('wash', 'size', {
            kind: 'list',
            options: [
              { value: '', label: say('records.size_same') },
              ...sizes
                .filter((size) => size !== 'unknown')
                .map((size) => ({ value: size, label: sizeWords(size, language) })),
            ],
          }),
          note('wash'),
        ],
        { cautions: ['wash', ...(garment.facts.wash === 'never' ? ['never-washed'] : [])] },
      ),
    incident: () =>
      form('incident', [said('incident', say('records.fields.happened'))], {
        cautions: ['stop'],
      }),
    settle: () =>
      form('settle', [said('settle', say('records.fields.decided'))], {
        photo: 'none',
        to: staffPost,
      }),
    tell: (name: string) =>
      form(
        'tell',
        [said('tell', say('records.fields.tell'), reader.customer.say('records.tell', { name }))],
        {
          photo: 'none',
          to: staffPost,
        },
      ),
    undo: (seq: number): RecordForm => {
      const open = sentAs('undo', String(seq))
      return {
        act: 'undo',
        label: say('records.acts.undo'),
        postTo,
        cautions: [],
        fields: [
          {
            name: 'note',
            label: say('custody.field.why'),
            hint: null,
            kind: 'words',
            options: [],
            value: open ? typed('note') : '',
            required: true,
          },
        ],
        photo: 'none',
        open,
      }
    },
  }
}
