// Loaded only where Thai is written; the files themselves come when a letter is drawn.
import '@fontsource/noto-sans-thai/thai-400.css'
import '@fontsource/noto-sans-thai/thai-700.css'
import '@fontsource/noto-sans-thai/thai-800.css'
