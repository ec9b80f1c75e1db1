import { constants } from 'node:zlib'
import compress from '@fastify/compress'
import formbody from '@fastify/formbody'
import multipart from '@fastify/multipart'
import swagger from '@fastify/swagger'
import Fastify, { type FastifyBaseLogger, type FastifyInstance, LogController } from 'fastify'
import {
  jsonSchemaTransform,
  jsonSchemaTransformObject,
  serializerCompiler,
  validatorCompiler,
} from 'fastify-type-provider-zod'
import type { Clock } from './base/clock.ts'
import { newId } from './base/ids.ts'
import { type Log, logOf } from './base/log.ts'
import type { Drafts } from './desk/drafts.ts'
import type { Live } from './desk/live-files.ts'
import { outboxOf } from './desk/mail/outbox.ts'
import type { Conversation } from './intake/conversation.ts'
import type { Knowledge } from './intake/knowledge.ts'
import type { PhotoStore } from './photo/keep.ts'
import type { LabelReader } from './photo/label-words.ts'
import type { Lane } from './photo/lane.ts'
import type { Paints } from './photo/paint.ts'
import type { Plans } from './planning/plans.ts'
import type { Store } from './store/open.ts'
import type { Assets } from './web/assets/manifest.ts'
import { assetRoutes } from './web/assets/routes.ts'
import type { ChatContext } from './web/chat/context.ts'
import { languageOf, spokenIn } from './web/chat/frame.ts'
import { chatRoutes } from './web/chat/routes.ts'
import { lookRoutes } from './web/chat/shop-look.ts'
import { troublePage } from './web/chat/trouble-page.ts'
import { deskRoutes } from './web/desk/routes.ts'
import { tagLinkRoutes } from './web/desk/tag-routes.ts'
import { embedRoutes } from './web/embed/routes.ts'
import { failureAnswer, handleFailures, sayWhenAgain, type TroubleShown } from './web/errors.ts'
import { counting, openFigures } from './web/figures.ts'
import { figuresRoute } from './web/figures-route.ts'
import { healthRoutes } from './web/health.ts'
import { limits } from './web/limits.ts'
import { type PressureLimits, relievePressure, usualPressure } from './web/pressure.ts'
import type { Printer } from './web/printer.ts'
import { openQuotas, type QuotaSettings, usualQuotas } from './web/quotas.ts'
import { logRequests } from './web/request-log.ts'
import { secure, secureHeaders } from './web/security.ts'
import { answerUnread } from './web/unread-requests.ts'
import { anyone, requireWho } from './web/who.ts'

/** Everything a running product is made of. Nothing here listens or reads the environment. */
export interface Parts {
  readonly store: Store
  readonly photos: PhotoStore
  readonly lane: Lane
  /** Reads labels on photos; without it labels are typed. */
  readonly labels?: LabelReader
  readonly paints: Paints
  readonly plans: Plans
  /** Makes papers into PDF. */
  readonly printer: Printer
  readonly knowledge: Knowledge
  /** The owner's files as they apply, and what tries others. */
  readonly live: Live
  readonly drafts: Drafts
  readonly conversation: Conversation
  readonly assets: Assets
  readonly log: Log
  readonly clock: Clock
  /** Origins of the sites whose pages may hold the intake. */
  readonly embedOrigins: readonly string[]
  /** The address people reach us at; null: as each request says. */
  readonly publicUrl: string | null
  /** Whoever bears it may read the figures; null: this machine alone. */
  readonly metricsToken?: string | null
  readonly quotas?: QuotaSettings
  readonly pressure?: PressureLimits
  /** Proxies that are believed when they say whom a request came from; left out: those on this machine. */
  readonly trustedProxies?: readonly string[]
}

/** Assembles the product's pages and routes. */
export async function buildApp(parts: Parts): Promise<FastifyInstance> {
  const https = parts.publicUrl?.startsWith('https:') ?? false
  const figures = openFigures({
    photos: () => parts.lane.waiting(),
    plans: () => parts.plans.waiting(),
    mails: () => outboxOf(parts.store),
  })
  const context = { ...parts, ...counting(figures, parts) } satisfies ChatContext
  const trouble: TroubleShown = {
    // What cannot be asked for now is not asked for.
    language: (request, { code }) =>
      code === 'busy' || code === 'store_unavailable'
        ? languageOf(request, context)
        : spokenIn(request, context),
    page: (request, failure, language) => troublePage(context, request, failure, language),
    failed: figures.failed,
  }
  const answerFailure = failureAnswer(trouble)
  const app = Fastify({
    loggerInstance: parts.log as FastifyBaseLogger,
    logController: new LogController({ disableRequestLogging: true }),
    genReqId: newId,
    childLoggerFactory: (_, { reqId }) => logOf(parts.log, String(reqId)) as FastifyBaseLogger,
    trustProxy: [...(parts.trustedProxies ?? ['loopback'])],
    bodyLimit: limits.formBytes,
    // A form that comes a byte at a time does not hold its place for ever.
    requestTimeout: limits.requestMs,
    // An address that cannot even be read never reaches a route.
    frameworkErrors: (error, request, reply) => void answerFailure(request, reply, error),
    clientErrorHandler: answerUnread,
    routerOptions: { maxParamLength: 200 },
    // Who comes on an open connection while the server closes is answered, and sent elsewhere the next time.
    return503OnClosing: false,
  })
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)

  requireWho(app)
  logRequests(app, figures)
  handleFailures(app, trouble)
  sayWhenAgain(app)
  secureHeaders(app, { https, embedOrigins: parts.embedOrigins })
  relievePressure(app, parts.pressure ?? usualPressure)
  app.decorate('quotas', openQuotas(parts, parts.quotas ?? usualQuotas))
  await secure(app, parts)
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Pieceworth',
        version: '0.1.0',
        description: 'Guided intake for memory quilts.',
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  })
  // Asked for page by page: where a cookie is the key, what is compressed together could be guessed (BREACH).
  await app.register(compress, {
    global: false,
    encodings: ['br', 'gzip'],
    brotliOptions: { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } },
  })
  await app.register(formbody, { bodyLimit: limits.formBytes })
  await app.register(multipart, {
    limits: {
      fileSize: limits.photoBytes,
      files: limits.photosAtOnce,
      fields: 40,
      fieldSize: 64 * 1024,
    },
  })

  await app.register(
    healthRoutes({
      store: () => parts.store.ready(),
      photos: () => parts.photos.ready(),
      labels: () => parts.labels?.state() ?? 'absent',
      leaving: () => app.leaving.now,
    }),
  )
  await app.register(assetRoutes(parts.assets))
  embedRoutes(app, parts.assets)
  lookRoutes(app, parts.knowledge.shop)
  await app.register(async (scope) => chatRoutes(scope, context))
  tagLinkRoutes(app)
  await app.register(deskRoutes({ ...context, https }, figures.failed), { prefix: '/desk' })
  figuresRoute(app, figures, parts.metricsToken ?? null)
  app.get(
    '/api/docs',
    { config: { who: anyone }, schema: { summary: 'This document: OpenAPI 3.1' } },
    async () => app.swagger(),
  )
  return app
}
