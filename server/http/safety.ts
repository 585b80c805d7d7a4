/** Headers of every answer (reliability 6, S16 and S17). @param host checked Host header: older browsers do not count ws: as 'self' */
export function safetyHeaders(host: string): Record<string, string> {
  return {
    'content-security-policy': [
      "default-src 'self'",
      "img-src 'self' data: blob:",
      `connect-src 'self' ws://${host} wss://${host}`,
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'none'",
    ].join('; '),
    'x-content-type-options': 'nosniff',
    // nothing goes to other sites; under `no-referrer` a browser hides the origin of the form that pairs a tablet as well, and the guard turns it away
    'referrer-policy': 'same-origin',
    'permissions-policy': 'geolocation=(), microphone=(), payment=(), usb=()',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
  }
}
