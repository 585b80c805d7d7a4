import { createContext } from 'svelte'
import type { Choice } from './choice/choice.svelte.ts'
import type { Session } from './live/session.svelte.ts'
import type { Router } from './router.svelte.ts'
import type { Sounder } from './sound/sounder.svelte.ts'
import type { Speech } from './words/speech.svelte.ts'

/** Made in App, handed down; there are no singletons in modules. */
export const [session, provideSession] = createContext<Session>()
export const [speech, provideSpeech] = createContext<Speech>()
export const [choice, provideChoice] = createContext<Choice>()
export const [router, provideRouter] = createContext<Router>()
export const [sounder, provideSounder] = createContext<Sounder>()
