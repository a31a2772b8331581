import { readYaml, type YamlFile } from '../../server/knowledge/yaml-file.ts'

/** Reads as the server does, but each text of a file once: for one and the same set of quantities. */
export function readOnce(): typeof readYaml {
  const known = new Map<string, YamlFile>()
  return (file, text, schema) => {
    const key = `${file}\n${text}`
    const read = known.get(key) ?? readYaml(file, text, schema)
    known.set(key, read)
    return read
  }
}
