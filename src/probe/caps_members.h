/* The 53 members that D3DCAPS8 and D3DCAPS9 begin with; only the last differs in name. */
#define COMMON_CAPS(type, last)                                                                                        \
    MEMBER(type, "DeviceType", DeviceType), MEMBER(type, "AdapterOrdinal", AdapterOrdinal), MEMBER(type, "Caps", Caps), \
        MEMBER(type, "Caps2", Caps2), MEMBER(type, "Caps3", Caps3),                                                    \
        MEMBER(type, "PresentationIntervals", PresentationIntervals), MEMBER(type, "CursorCaps", CursorCaps),          \
        MEMBER(type, "DevCaps", DevCaps), MEMBER(type, "PrimitiveMiscCaps", PrimitiveMiscCaps),                        \
        MEMBER(type, "RasterCaps", RasterCaps), MEMBER(type, "ZCmpCaps", ZCmpCaps),                                    \
        MEMBER(type, "SrcBlendCaps", SrcBlendCaps), MEMBER(type, "DestBlendCaps", DestBlendCaps),                      \
        MEMBER(type, "AlphaCmpCaps", AlphaCmpCaps), MEMBER(type, "ShadeCaps", ShadeCaps),                              \
        MEMBER(type, "TextureCaps", TextureCaps), MEMBER(type, "TextureFilterCaps", TextureFilterCaps),                \
        MEMBER(type, "CubeTextureFilterCaps", CubeTextureFilterCaps),                                                  \
        MEMBER(type, "VolumeTextureFilterCaps", VolumeTextureFilterCaps),                                              \
        MEMBER(type, "TextureAddressCaps", TextureAddressCaps),                                                        \
        MEMBER(type, "VolumeTextureAddressCaps", VolumeTextureAddressCaps), MEMBER(type, "LineCaps", LineCaps),        \
        MEMBER(type, "MaxTextureWidth", MaxTextureWidth), MEMBER(type, "MaxTextureHeight", MaxTextureHeight),          \
        MEMBER(type, "MaxVolumeExtent", MaxVolumeExtent), MEMBER(type, "MaxTextureRepeat", MaxTextureRepeat),          \
        MEMBER(type, "MaxTextureAspectRatio", MaxTextureAspectRatio), MEMBER(type, "MaxAnisotropy", MaxAnisotropy),    \
        MEMBER(type, "MaxVertexW", MaxVertexW), MEMBER(type, "GuardBandLeft", GuardBandLeft),                          \
        MEMBER(type, "GuardBandTop", GuardBandTop), MEMBER(type, "GuardBandRight", GuardBandRight),                    \
        MEMBER(type, "GuardBandBottom", GuardBandBottom), MEMBER(type, "ExtentsAdjust", ExtentsAdjust),                \
        MEMBER(type, "StencilCaps", StencilCaps), MEMBER(type, "FVFCaps", FVFCaps),                                    \
        MEMBER(type, "TextureOpCaps", TextureOpCaps), MEMBER(type, "MaxTextureBlendStages", MaxTextureBlendStages),    \
        MEMBER(type, "MaxSimultaneousTextures", MaxSimultaneousTextures),                                              \
        MEMBER(type, "VertexProcessingCaps", VertexProcessingCaps), MEMBER(type, "MaxActiveLights", MaxActiveLights),  \
        MEMBER(type, "MaxUserClipPlanes", MaxUserClipPlanes),                                                          \
        MEMBER(type, "MaxVertexBlendMatrices", MaxVertexBlendMatrices),                                                \
        MEMBER(type, "MaxVertexBlendMatrixIndex", MaxVertexBlendMatrixIndex), MEMBER(type, "MaxPointSize", MaxPointSize), \
        MEMBER(type, "MaxPrimitiveCount", MaxPrimitiveCount), MEMBER(type, "MaxVertexIndex", MaxVertexIndex),          \
        MEMBER(type, "MaxStreams", MaxStreams), MEMBER(type, "MaxStreamStride", MaxStreamStride),                      \
        MEMBER(type, "VertexShaderVersion", VertexShaderVersion),                                                      \
        MEMBER(type, "MaxVertexShaderConst", MaxVertexShaderConst),                                                    \
        MEMBER(type, "PixelShaderVersion", PixelShaderVersion), MEMBER(type, #last, last)
