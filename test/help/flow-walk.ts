import { admit, type Followed, follow } from '../../src/flow/follow.ts'
import type { Act, Flow, Question, Rules } from '../../src/flow/grammar.ts'
import { offered, type RawReply, readReply } from '../../src/flow/reply.ts'

/**
 * Walks a flow as a visitor does, one question after the other. A test names the question it believes
 * to be at; where the conversation stands elsewhere the test is lost, and it is told so.
 */
export class FlowWalk {
  readonly acts: Act[] = []
  private readonly flow: Flow
  private readonly rules: Rules

  constructor(flow: Flow, rules: Rules) {
    this.flow = flow
    this.rules = rules
  }

  get state(): Followed {
    return follow(this.flow, this.acts, this.rules)
  }

  /** `size` or, in an item, `2:size`; `gather`; `end`. */
  get place(): string {
    const { place } = this.state
    if (place.at !== 'question') return place.at
    return place.item === 0 ? place.question.id : `${place.item}:${place.question.id}`
  }

  stands(place: string): this {
    if (this.place === place) return this
    throw new Error(`this test is lost: it means to be at "${place}" but stands at "${this.place}"`)
  }

  answer(place: string, raw: RawReply): this {
    this.stands(place)
    const [item, question] = this.spot(place)
    const walk =
      item === 0
        ? this.state.parts.find(({ open }) => open?.id === question.id)
        : this.state.items.find(({ n }) => n === item)
    const options = offered(question, walk!.replies, this.rules)
    const reply = readReply(question, options, raw)
    return this.act({ act: 'answer', item, question: question.id, reply })
  }

  choose(place: string, value: string | string[]): this {
    return this.answer(place, { value })
  }

  skip(place: string): this {
    return this.answer(place, { act: 'skip' })
  }

  ask(place: string): this {
    return this.answer(place, { act: 'ask' })
  }

  add(): this {
    return this.stands('gather').act({ act: 'add', item: this.state.items.length + 1 })
  }

  close(): this {
    return this.stands('gather').act({ act: 'close' })
  }

  act(act: Act): this {
    admit(this.flow, this.state, act)
    this.acts.push(act)
    return this
  }

  private spot(place: string): [number, Question] {
    const { place: at } = this.state
    if (at.at !== 'question') throw new Error(`there is no question at "${place}"`)
    return [at.item, at.question]
  }
}
