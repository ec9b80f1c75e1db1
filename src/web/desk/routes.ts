import type { FastifyPluginAsync } from 'fastify'
import { handleFailures, type TroubleShown } from '../errors.ts'
import { agreementRoutes } from './agreement-routes.ts'
import { arrangeRoutes } from './arrange-routes.ts'
import { benchRoutes } from './bench-routes.ts'
import { boxCheckRoutes } from './box-check-routes.ts'
import { calendarRoutes } from './calendar-routes.ts'
import { type DeskContext, deskLanguage } from './context.ts'
import { countRoutes } from './count-routes.ts'
import { custodyRoutes } from './custody-routes.ts'
import { doorRoutes } from './door-routes.ts'
import { draftRoutes } from './draft-routes.ts'
import { embedDeskRoutes } from './embed-routes.ts'
import { factsRoutes } from './facts-routes.ts'
import { fileRoutes } from './file-routes.ts'
import { guardDesk, guardForms } from './guard.ts'
import { keptRoutes } from './kept-routes.ts'
import { laidOutRoutes } from './laid-out-routes.ts'
import { mailRoutes } from './mail-routes.ts'
import { messageRoutes } from './message-routes.ts'
import { numberRoutes } from './number-routes.ts'
import { offerRoutes } from './offer-routes.ts'
import { paperRoutes } from './paper-routes.ts'
import { parcelRoutes } from './parcel-routes.ts'
import { peopleRoutes } from './people-routes.ts'
import { pileRoutes } from './pile-routes.ts'
import { planRoutes } from './plan-routes.ts'
import { queueRoutes } from './queue-routes.ts'
import { recordRoutes } from './record-routes.ts'
import { sheetRoutes } from './sheet-routes.ts'
import { shopRoutes } from './shop-routes.ts'
import { spotsRoutes } from './spots-routes.ts'
import { tagRoutes } from './tag-routes.ts'
import { teardownRoutes } from './teardown-routes.ts'
import { troubleHtml } from './trouble-page.ts'
import { whatIfRoutes } from './what-if-routes.ts'

/**
 * The desk, to be registered under /desk after cookies and rate limits. What is behind the guard
 * stands in the second scope; the first is the door.
 */
export const deskRoutes =
  (context: DeskContext, failed: TroubleShown['failed']): FastifyPluginAsync =>
  async (app) => {
    app.decorateRequest('atDesk', null)
    app.decorateRequest('deskFiles', null)
    handleFailures(app, {
      language: (request) => deskLanguage(request, context),
      page: (request, failure, language) => troubleHtml(context, request, failure, language),
      failed,
    })
    await app.register(async (door) => {
      guardForms(door)
      await door.register(doorRoutes(context))
      await door.register(tagRoutes(context))
    })
    await app.register(async (desk) => {
      guardDesk(desk, context)
      await desk.register(queueRoutes(context))
      await desk.register(benchRoutes(context))
      await desk.register(peopleRoutes(context))
      await desk.register(fileRoutes(context))
      await desk.register(draftRoutes(context))
      await desk.register(numberRoutes(context))
      await desk.register(embedDeskRoutes(context))
      await desk.register(shopRoutes(context))
      await desk.register(pileRoutes(context))
      await desk.register(custodyRoutes(context))
      await desk.register(parcelRoutes(context))
      await desk.register(boxCheckRoutes(context))
      await desk.register(recordRoutes(context))
      await desk.register(laidOutRoutes(context))
      await desk.register(countRoutes(context))
      await desk.register(messageRoutes(context))
      await desk.register(keptRoutes(context))
      await desk.register(mailRoutes(context))
      await desk.register(factsRoutes(context))
      await desk.register(spotsRoutes(context))
      await desk.register(sheetRoutes(context))
      await desk.register(teardownRoutes(context))
      await desk.register(paperRoutes(context))
      await desk.register(planRoutes(context))
      await desk.register(arrangeRoutes(context))
      await desk.register(whatIfRoutes(context))
      await desk.register(offerRoutes(context))
      await desk.register(agreementRoutes(context))
      await desk.register(calendarRoutes(context))
    })
  }
