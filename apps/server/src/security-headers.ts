import type { FastifyHelmetOptions } from "@fastify/helmet";

const self = ["'self'"];
const none = ["'none'"];

/**
 * What the page may do: load its own files and nothing else. No inline script or style, no other origin, no
 * framing, no form that leaves the page.
 */
export function securityHeaders({ https }: { readonly https: boolean }): FastifyHelmetOptions {
  return {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: none,
        scriptSrc: self,
        scriptSrcAttr: none,
        styleSrc: self,
        styleSrcAttr: none,
        imgSrc: self,
        fontSrc: self,
        connectSrc: self,
        manifestSrc: self,
        workerSrc: self,
        objectSrc: none,
        baseUri: none,
        formAction: none,
        frameAncestors: none,
      },
    },
    frameguard: { action: "deny" },
    referrerPolicy: { policy: "no-referrer" },
    // Where the page is served in plain HTTP on this machine, asking the browser for HTTPS would shut it out.
    strictTransportSecurity: https,
  };
}

/** Powers of the device: the camera reads the code of a second reader, the page asks for no other. */
export const permissionsPolicy = "camera=(self), geolocation=(), microphone=(), payment=(), usb=()";
