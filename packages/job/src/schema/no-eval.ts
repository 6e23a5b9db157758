import * as z from "zod";

// Schemas look at this setting while they are built: it must run before any of them, or a page with a
// strict content-security policy logs a violation for zod's probe of `Function`.
z.config({ jitless: true });
