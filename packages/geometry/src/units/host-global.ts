// Browsers know the object that global names are looked up in as `globalThis` alone; convert-units reads it as
// `global` while it loads.
if (!Reflect.has(globalThis, "global")) Reflect.set(globalThis, "global", globalThis);

/** Read by the unit library's module, so that no bundler drops this one for having no use. */
export const hasGlobal: boolean = Reflect.has(globalThis, "global");
