import {
  add,
  avgPool,
  concat,
  conv2d,
  depthwiseConv2d,
  div,
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
 * Runs a graph on tfjs. `input` is what `cutCrop` gives, rows, columns, channels.
 * @returns the graph's outputs in their order; to be disposed of by the caller
 */
export function runGraph(graph: OnnxGraph, weights: Weights, input: Tensor4D): Tensor[] {
  return tidy(() => {
    const values = new Map<string, Tensor>([...weights, ['crop', input]]);
    for (const node of graph.nodes) {
      values.set(
        node.outputs[0]!,
        runNode(
          node,
          node.inputs.map((name) => values.get(name)!),
        ),
      );
    }
    return graph.outputs.map((name) => values.get(name)!);
  });
}

const spatial = (axes: readonly number[] | undefined): number[] => (axes ?? []).map((axis) => axis - 1);

function runNode(node: OnnxNode, inputs: readonly Tensor[]): Tensor {
  const [a, b, c] = inputs as [Tensor, Tensor?, Tensor?];
  switch (node.op) {
    case 'Conv':
      return convolve(node, a as Tensor4D, b as Tensor4D, c!);
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

function convolve(node: OnnxNode, x: Tensor4D, filter: Tensor4D, bias: Tensor): Tensor {
  const stride = node.ints.strides?.[0] ?? 1;
  const pad = node.ints.pads?.[0] ?? 0;
  const isDeep = (node.ints.group?.[0] ?? 1) > 1;
  const made = isDeep ? depthwiseConv2d(x, filter, stride, pad) : conv2d(x, filter, stride, pad);
  return add(made, bias);
}
