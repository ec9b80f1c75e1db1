import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import { calendarOf, dayOf, startOf } from '../../desk/capacity.ts'
import { promisesOf } from '../../desk/promises.ts'
import type { Language } from '../../words/words.ts'
import { staff } from '../who.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { showDesk } from './page.ts'
import { deskPaths } from './paths.ts'
import { hoursWords } from './present-agree.ts'
import type { CalendarPage } from './view-agree.ts'
import { dayWords } from './when.ts'

/** So many weeks are shown at least. */
const weeksShown = 12
const all = 100

function calendarPage(
  calendar: ReturnType<typeof calendarOf>,
  { say, locale }: Language,
): CalendarPage {
  const link = (pile: number) => ({
    label: say('desk.pile', { number: pile }),
    href: deskPaths.agreement(pile),
  })
  return {
    page: 'calendar',
    title: say('desk.calendar.title'),
    help: say('desk.calendar.help'),
    late: calendar.late.map(({ pile, minutes }) =>
      say('desk.calendar.late', { pile, hours: hoursWords(minutes, locale) }),
    ),
    weeks: calendar.weeks.map(({ monday, minutes, promised, working, due }) => ({
      week: say('desk.calendar.week', { day: dayWords(startOf(monday), locale) }),
      hours: say(minutes === 0 ? 'desk.calendar.closed' : 'desk.calendar.hours', {
        promised: hoursWords(promised, locale),
        all: hoursWords(minutes, locale),
      }),
      percent: minutes === 0 ? 0 : Math.round((promised / minutes) * all),
      working: working.map(link),
      due: due.map(link),
    })),
  }
}

/** What the benches have promised, week by week. */
export const calendarRoutes =
  (context: DeskContext): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/calendar',
      { config: { who: staff }, schema: { summary: 'What is promised, week by week' } },
      async (request, reply) => {
        const { store, clock, knowledge } = context
        const { bench } = knowledge.shop
        const promises = await promisesOf(store.db, bench.minutes)
        const calendar = calendarOf(bench, dayOf(clock()), promises, weeksShown)
        const page = calendarPage(calendar, deskLanguage(request, context))
        return showDesk(context, request, reply, page)
      },
    )
  }
