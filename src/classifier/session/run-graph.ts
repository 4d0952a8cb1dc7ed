import {
  add,
  avgPool,
  concat,
  div,
  fused,
  matMul,
  max,
  maximum,
  mul,
  relu,
  sqrt,
  sub,
  sum,
  type Tensor,
  type Tensor4D,
  tensor,
  tidy,
  transpose,
} from '@tensorflow/tfjs-core';
import type { OnnxGraph, OnnxNode } from '../read-onnx.ts';

/** The weights of a graph on the backend, pictures as rows, columns, channels. */
export type Weights = ReadonlyMap<string, Tensor>;

/** Lays the weights out as the backend wants them. To be disposed of by the caller. */
export function placeWeights(graph: OnnxGraph): Weights {
  const filters = new Map(
    graph.nodes.flatMap((node) =>
      node.op === 'Conv' ? [[node.inputs[1] ?? '', (node.ints.group?.[0] ?? 1) > 1] as const] : [],
    ),
  );
  return new Map(
    [...graph.tensors].map(([name, { dims, data }]) => {
      const plain = tensor(data, [...dims]);
      if (dims.length !== 4) return [name, plain];
      const isDeep = filters.get(name);
      const order = isDeep === undefined ? [0, 2, 3, 1] : isDeep ? [2, 3, 0, 1] : [2, 3, 1, 0];
      const laid = transpose(plain, order);
      plain.dispose();
      return [name, laid];
    }),
  );
}

/**
 * Runs a graph on tfjs. `input` is what `cutCrop` gives, rows, columns, channels. What no later step needs is let go at once: kept
 * to the end, all layers together would take some 150 MB.
 * @returns the graph's outputs in their order; to be disposed of by the caller
 */
export function runGraph(graph: OnnxGraph, weights: Weights, input: Tensor4D): Tensor[] {
  const steps = joinActivations(graph);
  const lastUse = new Map(
    steps.flatMap(({ node }, step) => node.inputs.map((name) => [name, step] as const)),
  );
  const stays = new Set([...weights.keys(), ...graph.outputs, 'crop']);
  const values = new Map<string, Tensor>([...weights, ['crop', input]]);
  for (const [step, { node, output, activation }] of steps.entries()) {
    const inputs = node.inputs.map((name) => values.get(name)!);
    values.set(
      output,
      tidy(() => runNode(node, inputs, activation)),
    );
    for (const name of new Set(node.inputs)) {
      if (stays.has(name) || lastUse.get(name) !== step) continue;
      values.get(name)!.dispose();
      values.delete(name);
    }
  }
  return graph.outputs.map((name) => values.get(name)!);
}

type Activation = 'linear' | 'relu';

/** One thing to do: a node, together with the cut at 0 that follows it where it is a convolution that nothing else reads. */
interface Step {
  readonly node: OnnxNode;
  readonly output: string;
  readonly activation: Activation;
}

function joinActivations({ nodes, outputs }: OnnxGraph): Step[] {
  const readers = new Map<string, number>();
  for (const name of [...nodes.flatMap(({ inputs }) => inputs), ...outputs])
    readers.set(name, (readers.get(name) ?? 0) + 1);
  const joined = new Map<string, string>();
  const convolved = new Set(nodes.flatMap(({ op, outputs: [own] }) => (op === 'Conv' ? [own!] : [])));
  for (const {
    op,
    inputs,
    outputs: [own],
  } of nodes)
    if (op === 'Relu' && convolved.has(inputs[0]!) && readers.get(inputs[0]!) === 1)
      joined.set(inputs[0]!, own!);
  const cuts = new Set(joined.values());
  return nodes.flatMap((node) => {
    const own = node.outputs[0]!;
    if (cuts.has(own)) return [];
    const cut = joined.get(own);
    return [{ node, output: cut ?? own, activation: cut === undefined ? 'linear' : 'relu' }];
  });
}

const spatial = (axes: readonly number[] | undefined): number[] => (axes ?? []).map((axis) => axis - 1);

function runNode(node: OnnxNode, inputs: readonly Tensor[], activation: Activation): Tensor {
  const [a, b, c] = inputs as [Tensor, Tensor?, Tensor?];
  switch (node.op) {
    case 'Conv':
      return convolve(node, a as Tensor4D, b as Tensor4D, c!, activation);
    case 'Relu':
      return relu(a);
    case 'Add':
      return add(a, b!);
    case 'Sub':
      return sub(a, b!);
    case 'Mul':
      return mul(a, b!);
    case 'Div':
      return div(a, b!);
    case 'Max':
      return maximum(a, b!);
    case 'Sqrt':
      return sqrt(a);
    case 'ReduceSum':
      return sum(a, spatial(node.ints.axes));
    case 'ReduceMax':
      return max(a, spatial(node.ints.axes));
    case 'AveragePool':
      return avgPool(a as Tensor4D, 2, 2, 'valid');
    case 'Concat':
      return concat([...inputs], a.rank - 1);
    case 'Gemm':
      return add(matMul(a as never, b as never, false, node.ints.transB?.[0] === 1), c!);
    default:
      throw new Error(`${node.op} is not run`);
  }
}

/** Convolution, its bias and the cut at 0 in one go: by themselves the last two would each pass over all of the layer again. */
function convolve(
  node: OnnxNode,
  x: Tensor4D,
  filter: Tensor4D,
  bias: Tensor,
  activation: Activation,
): Tensor {
  const strides = node.ints.strides?.[0] ?? 1;
  const pad = node.ints.pads?.[0] ?? 0;
  const isDeep = (node.ints.group?.[0] ?? 1) > 1;
  return (isDeep ? fused.depthwiseConv2d : fused.conv2d)({ x, filter, strides, pad, bias, activation });
}
