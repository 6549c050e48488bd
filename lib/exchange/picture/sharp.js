// @ts-check
import sharp from 'sharp'

/** The one door to the library that decodes and encodes pictures: one thread a picture, nothing kept between them. */
sharp.concurrency(1)
sharp.cache(false)

export { sharp }
