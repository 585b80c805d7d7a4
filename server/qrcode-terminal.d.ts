declare module 'qrcode-terminal' {
  const qrcode: { generate(text: string, options: { small: boolean }, done: (picture: string) => void): void }
  export default qrcode
}
