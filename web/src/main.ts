import { mount } from 'svelte'
import '@fontsource/atkinson-hyperlegible-next/latin-400.css'
import '@fontsource/atkinson-hyperlegible-next/latin-700.css'
import '@fontsource/atkinson-hyperlegible-next/latin-800.css'
import './look/tokens.css'
import './look/page.css'
import App from './App.svelte'
import { mendLanguageTag } from './lib/language-tag.ts'
import { lendWhatIsMissing } from './lib/old-tablets.ts'
import { placeOf } from './lib/place.ts'

lendWhatIsMissing()
mendLanguageTag(navigator)
const target = document.getElementById('page')
if (target) mount(App, { target, props: { place: placeOf(document.baseURI) } })
