# Builds from a clean clone: docker build -t pieceworth .
FROM node:20.20.2-bookworm-slim AS build
WORKDIR /app
COPY . .
# Installing builds too (`prepare`); what only building needs goes again.
RUN npm ci && npm prune --omit=dev --ignore-scripts

FROM node:20.20.2-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0 PORT=8080 DATA_DIR=/data
WORKDIR /app
COPY --from=build /app /app
# Records and photos belong to the service's account alone.
RUN mkdir -m 700 /data && chown node:node /data
USER node
VOLUME /data
EXPOSE 8080
STOPSIGNAL SIGTERM
HEALTHCHECK --interval=5s --timeout=4s --start-period=30s \
  CMD ["node", "-e", "fetch('http://127.0.0.1:8080/readyz').then(({ ok }) => process.exit(ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "dist/cli.js", "serve"]
