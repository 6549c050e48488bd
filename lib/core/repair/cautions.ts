/** Cautions in short plain words. Each stands at the job lines that it concerns, never as a wall. */
export const cautions = {
  dust: 'Carbon and glass dust: extraction at the tool, respirator, goggles, gloves. Carbon dust shorts electrics.',
  skin: 'Uncured epoxy and amines can make the skin allergic for life: gloves, sleeves, none on the skin.',
  solvent: 'Solvent burns and its vapour is heavy: no flame or spark, fresh air, gloves.',
  thickStack:
    'A thick stack heats itself: slow ramp, thermocouple in the thickest place; never cure a heap of offcuts.',
  vessel: 'Ovens and autoclaves only by trained people under local rules.',
  vacuum: 'Full vacuum can crush a weak or cored mould: support it or pull less.',
  edges: 'Cut laminate has sharp edges and splinters: cut-resistant gloves.',
  lifting: 'Lift with two people or a hoist, at the lifting points.',
  hot: 'Hot mould: demould and handle below 50 °C.',
  dataSheet: "The maker's data sheet and local rules come first.",
} as const
