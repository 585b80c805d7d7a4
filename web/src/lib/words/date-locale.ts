/** Of a language of ours, for dates: the day stands before the month, as the labels of the trade write it; plain `en` would be American. */
export const dateLocale = (language: string): string => (language === 'en' ? 'en-GB' : language)
