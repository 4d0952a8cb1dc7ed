/** One step of a network as an ONNX file states it. */
export interface OnnxNode {
  readonly op: string;
  readonly inputs: readonly string[];
  readonly outputs: readonly string[];
  readonly ints: Readonly<Record<string, readonly number[]>>;
}

/** Numbers that come with the file. */
export interface OnnxTensor {
  readonly dims: readonly number[];
  readonly data: Float32Array;
}

export interface OnnxGraph {
  readonly nodes: readonly OnnxNode[];
  readonly tensors: ReadonlyMap<string, OnnxTensor>;
  readonly outputs: readonly string[];
}

/**
 * Reads what our own network needs of an ONNX file: nodes in order, their whole-number attributes, tensors of 32-bit and 16-bit
 * floats and of whole numbers of 8 bits. Weights that the file packs are unpacked.
 * Field numbers: `onnx.proto3` of the ONNX project, IR version 8; wire format: Protocol Buffers encoding guide.
 * @throws Error on anything else; the file's checksum is tested before
 */
export function readOnnx(file: Uint8Array): OnnxGraph {
  const graph = bytesOf(fieldsOf(file), 7)[0];
  if (graph === undefined) throw new Error('no graph in the file');
  const fields = fieldsOf(graph);
  return unpackWeights({
    nodes: bytesOf(fields, 1).map(readNode),
    tensors: new Map(bytesOf(fields, 5).map(readTensor)),
    outputs: bytesOf(fields, 12).map((value) => textOf(fieldsOf(value), 1)[0] ?? ''),
  });
}

/** Weights come as whole numbers, cast and multiplied row by row: done once here, so that only steps on pictures are left. */
function unpackWeights({ nodes, tensors, outputs }: OnnxGraph): OnnxGraph {
  const all = new Map(tensors);
  const left = nodes.filter(({ op, inputs, outputs: [output] }) => {
    const [a, b] = inputs.map((name) => all.get(name));
    if (op === 'Cast' && a) all.set(output!, a);
    else if (op === 'Mul' && a && b) all.set(output!, multiplyRows(a, b));
    else return true;
    for (const name of inputs) all.delete(name);
    return false;
  });
  return { nodes: left, tensors: all, outputs };
}

function multiplyRows({ dims, data }: OnnxTensor, rows: OnnxTensor): OnnxTensor {
  const perRow = data.length / rows.data.length;
  return { dims, data: data.map((value, k) => value * rows.data[Math.floor(k / perRow)]!) };
}

interface Field {
  readonly id: number;
  readonly value: number | Uint8Array;
}

function fieldsOf(bytes: Uint8Array): Field[] {
  const fields: Field[] = [];
  let at = 0;
  const varint = (): number => {
    let value = 0;
    for (let scale = 1; ; scale *= 128) {
      const byte = bytes[at++];
      if (byte === undefined) throw new Error('the file ends early');
      value += (byte & 127) * scale;
      if (byte < 128) return value;
    }
  };
  while (at < bytes.length) {
    const key = varint();
    const id = key >>> 3;
    switch (key & 7) {
      case 0:
        fields.push({ id, value: varint() });
        break;
      case 2: {
        const length = varint();
        if (at + length > bytes.length) throw new Error('the file ends early');
        fields.push({ id, value: bytes.subarray(at, at + length) });
        at += length;
        break;
      }
      case 5:
        at += 4;
        break;
      default:
        throw new Error(`wire type ${key & 7} is not read`);
    }
  }
  return fields;
}

const bytesOf = (fields: readonly Field[], id: number): Uint8Array[] =>
  fields.flatMap(({ id: own, value }) => (own === id && typeof value !== 'number' ? [value] : []));

const textOf = (fields: readonly Field[], id: number): string[] =>
  bytesOf(fields, id).map((bytes) => String.fromCharCode(...bytes));

/** Repeated whole numbers, packed or one by one. */
function numbersOf(fields: readonly Field[], id: number): number[] {
  return fields.flatMap(({ id: own, value }) => {
    if (own !== id) return [];
    return typeof value === 'number' ? [value] : unpackVarints(value);
  });
}

function unpackVarints(bytes: Uint8Array): number[] {
  const out: number[] = [];
  let value = 0;
  let scale = 1;
  for (const byte of bytes) {
    value += (byte & 127) * scale;
    scale *= 128;
    if (byte < 128) {
      out.push(value);
      value = 0;
      scale = 1;
    }
  }
  return out;
}

function readNode(bytes: Uint8Array): OnnxNode {
  const fields = fieldsOf(bytes);
  const ints = Object.fromEntries(
    bytesOf(fields, 5).map((attribute) => {
      const own = fieldsOf(attribute);
      return [textOf(own, 1)[0] ?? '', [...numbersOf(own, 3), ...numbersOf(own, 8)]];
    }),
  );
  return { op: textOf(fields, 4)[0] ?? '', inputs: textOf(fields, 1), outputs: textOf(fields, 2), ints };
}

/** How the kinds of numbers that our file holds are read (`TensorProto.DataType`): bytes of one, and the number there. */
const NUMBERS: Readonly<
  Record<number, readonly [bytes: number, read: (view: DataView, at: number) => number]>
> = {
  1: [4, (view, at) => view.getFloat32(at, true)],
  3: [1, (view, at) => view.getInt8(at)],
  10: [2, (view, at) => floatOf16(view.getUint16(at, true))],
};

/** IEEE 754 binary16: a sign, five bits of exponent, ten of fraction. */
function floatOf16(bits: number): number {
  const sign = bits & 0x8000 ? -1 : 1;
  const exponent = (bits >> 10) & 31;
  const fraction = (bits & 1023) / 1024;
  return sign * (exponent === 0 ? 2 ** -14 * fraction : 2 ** (exponent - 15) * (1 + fraction));
}

function readTensor(bytes: Uint8Array): [string, OnnxTensor] {
  const fields = fieldsOf(bytes);
  const raw = bytesOf(fields, 9)[0];
  const kind = NUMBERS[numbersOf(fields, 2)[0] ?? 0];
  if (kind === undefined || raw === undefined)
    throw new Error('only raw floats and whole numbers of 8 bits are read');
  const [size, read] = kind;
  const view = new DataView(raw.buffer, raw.byteOffset, raw.byteLength);
  const data = Float32Array.from({ length: raw.byteLength / size }, (_, k) => read(view, size * k));
  return [textOf(fields, 8)[0] ?? '', { dims: numbersOf(fields, 1), data }];
}
