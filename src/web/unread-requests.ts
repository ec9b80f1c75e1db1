import type { Socket } from 'node:net'

/** By the codes of Node's HTTP parser; whatever else cannot be read is 400. */
const statuses: Readonly<Record<string, string>> = {
  HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
  ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout',
}

/** Whoever still sends when the answer has gone out has so long to read it, ms. */
const lingerMs = 2_000

/**
 * Answers what could not be read as a request. Nobody knows by then what was asked, a HEAD perhaps, and to that an
 * answer has no content (RFC 9110, 9.3.2). The connection is closed in stages, as RFC 9112, 9.6 advises: closed while
 * the other side still sends it would be reset, and the answer lost.
 */
export function answerUnread(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable) return
  const status = statuses[error.code ?? ''] ?? '400 Bad Request'
  socket.end(`HTTP/1.1 ${status}\r\nconnection: close\r\ncontent-length: 0\r\n\r\n`)
  setTimeout(() => socket.destroy(), lingerMs).unref()
}
