#pragma once
#include <array>
#include <cstdint>
#include <vector>

namespace hither {

/// A corner of a triangle on the picture's plane: samples right and down, one over the depth in metres,
/// and how light it is there (index into the 256 tints of its look).
struct Corner { float x = 0, y = 0, w = 0, light = 0; };
using Tints = std::array<std::uint32_t, 256>;

/// Samples of a picture with their depths. Colours are premultiplied ARGB; where nothing was drawn they
/// are 0, with depth 0 (infinitely far).
struct Raster {
    int width = 0, height = 0;
    std::vector<float> w;                 ///< one over the depth of what is seen, m; surfaces are put back a little
    std::vector<std::uint32_t> colour;
    std::vector<std::uint16_t> piece;     ///< what is seen: pieces of one number have no line between them; 0 nothing
    std::vector<std::uint8_t> mask;       ///< 0 nothing of the outlined, 1 it is hidden there, 2 it is seen there

    void clear(int newWidth, int newHeight, bool withMask);
    /// Surfaces that hide what is behind them. Triangles wind either way.
    void fill(const Corner& a, const Corner& b, const Corner& c, const Tints& tints, std::uint16_t number);
    /// Surfaces that what is behind them shines through; they hide nothing.
    void blend(const Corner& a, const Corner& b, const Corner& c, const Tints& tints);
    /// Marks where a surface is, and whether it is seen there.
    void markIn(const Corner& a, const Corner& b, const Corner& c);
    /// A line two samples wide, where it is not hidden.
    void line(const Corner& from, const Corner& to, std::uint32_t premultiplied);
};

/// `over` drawn over what is there; both premultiplied.
inline std::uint32_t drawnOver(std::uint32_t over, std::uint32_t under) {
    const std::uint32_t left = 255 - (over >> 24);
    std::uint32_t rb = (under & 0x00ff00ffU) * left + 0x00800080U, ag = (under >> 8 & 0x00ff00ffU) * left + 0x00800080U;
    rb = (rb + (rb >> 8 & 0x00ff00ffU)) >> 8 & 0x00ff00ffU;
    ag = (ag + (ag >> 8 & 0x00ff00ffU)) & 0xff00ff00U;
    return over + (rb | ag);
}

}  // namespace hither
