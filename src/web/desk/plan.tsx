import { useSay } from '../chat/pieces.tsx'
import { QuiltForBench } from '../chat/quilt.tsx'
import { Cuts } from './plan-cuts.tsx'
import { GarmentRoles } from './roles.tsx'
import { Savings } from './savings.tsx'
import type { PlanGarment, PlanPage, PlanRole } from './view-plan.ts'

/** How a pile becomes its quilt, on the screen and on paper. */
export function PlanView({ page }: { page: PlanPage }) {
  const say = useSay()
  const { plan, again, back } = page
  return (
    <main id="main" class="plan" tabIndex={-1} data-plan={page.state}>
      <p class="onward">
        <a href={back.href}>{back.label}</a> <a href={page.whatIf.href}>{page.whatIf.label}</a>
      </p>
      <div class="card pile">
        {page.refused && (
          <p class="errors" role="alert">
            {page.refused}
          </p>
        )}
        <h1 id="title">
          {page.title} <span class="quilt">{page.quilt}</span>
        </h1>
        <div class={`plan-state plan-${page.state}`}>
          {page.words.map((words) => (
            <p key={words}>{words}</p>
          ))}
          {again && (
            <p>
              <a href={again.href}>{again.label}</a>
            </p>
          )}
        </div>
        {page.cautions.length > 0 && (
          <div class="caution" role="note">
            {page.cautions.map((words) => (
              <p key={words} class="typed">
                {words}
              </p>
            ))}
          </div>
        )}
        {plan && (
          <section aria-labelledby="plan-shortage">
            <h2 id="plan-shortage">{say('desk.plan.shortage')}</h2>
            {plan.shortage.map((words) => (
              <p key={words} class="short-line">
                {words}
              </p>
            ))}
          </section>
        )}
      </div>
      {plan && <Roles roles={plan.roles} all={plan.all} />}
      {plan && <Garments garments={plan.garments} />}
      <Out out={page.out} />
      {page.savings && <Savings savings={page.savings} />}
      {page.quilts && <QuiltForBench quilts={page.quilts} />}
      {plan?.cuts && <Cuts cuts={plan.cuts} />}
    </main>
  )
}

function Roles({ roles, all }: { roles: readonly PlanRole[]; all: PlanRole }) {
  const say = useSay()
  const lacks = all.lacking > 0
  return (
    <section class="card" aria-labelledby="plan-roles">
      <h2 id="plan-roles">{say('desk.plan.by_role')}</h2>
      <table class="fact-table plan-table">
        <thead>
          <tr>
            <th scope="col">{say('desk.plan.columns.role')}</th>
            {(['wanted', 'given', 'bought', 'cloth'] as const).map((column) => (
              <th key={column} scope="col" class="amount">
                {say(`desk.plan.columns.${column}`)}
              </th>
            ))}
            {lacks && (
              <th scope="col" class="amount">
                {say('desk.plan.columns.lacking')}
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {roles.map((role) => (
            <Role key={role.name} role={role} lacks={lacks} />
          ))}
        </tbody>
        <tfoot>
          <Role role={all} lacks={lacks} />
        </tfoot>
      </table>
    </section>
  )
}

function Role({ role, lacks }: { role: PlanRole; lacks: boolean }) {
  const say = useSay()
  const amounts = {
    wanted: role.wanted,
    given: role.given,
    bought: role.bought,
    cloth: role.cloth ?? '–',
    ...(lacks && { lacking: role.lacking }),
  }
  return (
    <tr>
      <th scope="row">
        <span class="plan-name">{role.name}</span>
        {role.sizes.map((size) => (
          <span key={size} class="plan-size">
            {size}
          </span>
        ))}
      </th>
      {Object.entries(amounts).map(([column, amount]) => (
        <td key={column} class="amount" data-column={say(`desk.plan.columns.${column}`)}>
          {amount}
        </td>
      ))}
    </tr>
  )
}

function Garments({ garments }: { garments: readonly PlanGarment[] }) {
  const say = useSay()
  return (
    <section class="card" aria-labelledby="plan-garments">
      <h2 id="plan-garments">{say('desk.plan.by_garment')}</h2>
      <table class="fact-table plan-table">
        <thead>
          <tr>
            <th scope="col">{say('desk.plan.columns.garment')}</th>
            <th scope="col" class="amount">
              {say('desk.plan.columns.pieces')}
            </th>
            <th scope="col">{say('desk.plan.columns.which')}</th>
          </tr>
        </thead>
        <tbody>
          {garments.map((garment) => (
            <Row key={garment.n} garment={garment} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Row({ garment }: { garment: PlanGarment }) {
  const say = useSay()
  const { n, code, name, must, pieces, gives, idle, cut, without, roles } = garment
  return (
    <tr data-garment={n}>
      <th scope="row" id={`given-${n}`}>
        <span class="plan-name">
          {code} · {name}
        </span>
        {must && <strong class="plan-must">{say('desk.plan.must')}</strong>}
      </th>
      <td class="amount" data-column={say('desk.plan.columns.pieces')}>
        {pieces}
      </td>
      <td class="plan-which">
        {gives.map((words) => (
          <span key={words} class="plan-size">
            {words}
          </span>
        ))}
        {idle && <span class="plan-size">{idle}</span>}
        {cut && (
          <a class="plan-how" href={cut.href}>
            {cut.label}
          </a>
        )}
        <a class="plan-how" href={without.href}>
          {without.label}
        </a>
        {roles && <GarmentRoles form={roles} />}
      </td>
    </tr>
  )
}

function Out({ out }: { out: PlanPage['out'] }) {
  const say = useSay()
  if (out.length === 0) return null
  return (
    <section class="card" aria-labelledby="plan-out">
      <h2 id="plan-out">{say('desk.plan.out')}</h2>
      <dl class="plan-out">
        {out.map(({ name, why }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{why}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
