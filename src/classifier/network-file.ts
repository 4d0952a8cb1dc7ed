/** Size and SHA-256 of `models/signs.onnx`, as shipped. Written by `training/signs-network/ship.ts`. */
export const NETWORK_BYTES = 2970018;
export const NETWORK_SHA256 = 'f5f2c6101fb13e238c80e8900b41c84c0bf90862591ae6499393fd012cede192';
/** Which network this is, as `SeenByNetwork.network` names it. */
export const NETWORK_ID = NETWORK_SHA256.slice(0, 16);
