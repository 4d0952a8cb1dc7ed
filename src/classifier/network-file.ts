/** Size and SHA-256 of `models/signs.onnx`, as shipped. Written by `training/signs-network/ship.ts`. */
export const NETWORK_BYTES = 1236295;
export const NETWORK_SHA256 = '699ef41cbbeeaae8bac0d70a8521dd2da386915b3e78d6a998026a8973fb738a';
