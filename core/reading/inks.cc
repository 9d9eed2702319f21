#include "core/reading/inks.h"

#include <algorithm>
#include <cmath>

#include <gdal_priv.h>

#include "core/sheets/dataset.h"
#include "core/units/number_text.h"

namespace crosstick::reading {
namespace {

using sheets::Colours;

std::uint32_t opaque(std::uint32_t red, std::uint32_t green, std::uint32_t blue) {
    return 0xff000000U | (red << 16U) | (green << 8U) | blue;
}

std::uint32_t onWhite(std::uint32_t red, std::uint32_t green, std::uint32_t blue, std::uint32_t alpha) {
    const auto mix = [&](std::uint32_t c) { return (c * alpha + 255U * (255U - alpha) + 127U) / 255U; };
    return opaque(mix(red), mix(green), mix(blue));
}

/// Ink on white paper, without a colour profile: near enough to read a map by.
std::uint32_t printed(std::uint32_t cyan, std::uint32_t magenta, std::uint32_t yellow, std::uint32_t black) {
    const auto light = [&](std::uint32_t ink) { return ((255U - ink) * (255U - black) + 127U) / 255U; };
    return opaque(light(cyan), light(magenta), light(yellow));
}

bool isHeightsType(GDALDataType type) {
    return type == GDT_Int16 || type == GDT_Int32 || type == GDT_UInt32 || type == GDT_Float32 || type == GDT_Float64;
}

std::array<std::uint32_t, 256> paletteOf(GDALRasterBand& band) {
    std::array<std::uint32_t, 256> palette{};
    palette.fill(0xffffffffU);
    const GDALColorTable* table = band.GetColorTable();
    for (int n = 0; table != nullptr && n < std::min(256, table->GetColorEntryCount()); ++n) {
        const GDALColorEntry* c = table->GetColorEntry(n);
        const auto part = [](short value) { return static_cast<std::uint32_t>(std::clamp<short>(value, 0, 255)); };
        palette[static_cast<std::size_t>(n)] = onWhite(part(c->c1), part(c->c2), part(c->c3), part(c->c4));
    }
    // A TIFF's palette has no transparency of its own: the ink that stands for "nothing here" is the clear one.
    int hasNone = 0;
    const double none = band.GetNoDataValue(&hasNone);
    if (hasNone != 0 && none >= 0 && none <= 255) {
        palette[static_cast<std::size_t>(none)] = 0xffffffffU;
    }
    return palette;
}

/// Cameras and instruments keep a few thousand grades in 16 bits: a picture that would come out nearly black spans what
/// it holds.
Tones stretchedWhereDark(GDALRasterBand& band, Tones tones) {
    constexpr double kDark = 1.0 / 16;
    std::array<double, 2> span{0, 0};
    if (band.ComputeRasterMinMax(TRUE, span.data()) == CE_None && span[1] > span[0] && span[1] < tones.white * kDark) {
        return {span[0], span[1]};
    }
    return tones;
}

/// By the bits that the file declares, and whether its zero is white; other types span what they hold.
Tones tonesOf(GDALRasterBand& band) {
    Tones tones;
    const GDALDataType type = band.GetRasterDataType();
    const char* bits = band.GetMetadataItem("NBITS", "IMAGE_STRUCTURE");
    const auto declared = bits == nullptr ? std::nullopt : parseNumber(bits);
    if (declared && *declared >= 1 && *declared <= 16) {
        tones.white = std::exp2(*declared) - 1;
    } else if (type == GDT_UInt16) {
        tones.white = 65535;
    } else if (type != GDT_Byte) {
        std::array<double, 2> span{0, 1};
        if (band.ComputeRasterMinMax(TRUE, span.data()) == CE_None) {
            tones = {span[0], span[1]};
        }
    }
    if (type == GDT_UInt16) {
        tones = stretchedWhereDark(band, tones);
    }
    const char* inverted = band.GetMetadataItem("MINISWHITE", "IMAGE_STRUCTURE");
    if (inverted != nullptr && EQUAL(inverted, "YES")) {
        std::swap(tones.black, tones.white);
    }
    if (!(std::abs(tones.white - tones.black) > 0)) {
        tones.white = tones.black + 1;
    }
    return tones;
}

}  // namespace

sheets::Colours coloursOf(GDALDataset& dataset) {
    GDALRasterBand& first = *dataset.GetRasterBand(1);
    const GDALDataType type = first.GetRasterDataType();
    const int bands = dataset.GetRasterCount();
    if (GDALDataTypeIsComplex(type) != 0) {
        return Colours::Unknown;
    }
    if (first.GetColorTable() != nullptr) {
        return type == GDT_Byte ? Colours::Palette : Colours::Unknown;
    }
    // Inks and Lab that lie pixel by pixel GDAL has turned into RGB by now.
    if (first.GetColorInterpretation() == GCI_CyanBand) {
        return bands >= 4 ? Colours::Cmyk : Colours::Unknown;
    }
    if (bands == 1) {
        return isHeightsType(type) ? Colours::Heights : Colours::Grey;
    }
    if (bands == 2) {
        return Colours::GreyAlpha;
    }
    const bool alpha = bands > 3 && dataset.GetRasterBand(4)->GetColorInterpretation() == GCI_AlphaBand;
    return alpha ? Colours::Rgba : Colours::Rgb;
}

std::uint8_t Tones::byte(double value) const {
    const double share = (value - black) / (white - black);
    return std::isfinite(share) ? static_cast<std::uint8_t>(std::lround(std::clamp(share, 0.0, 1.0) * 255))
                                : std::uint8_t{255};
}

int Inks::bands() const {
    switch (colours) {
        case Colours::GreyAlpha:
            return 2;
        case Colours::Rgb:
            return 3;
        case Colours::Rgba:
        case Colours::Cmyk:
            return 4;
        case Colours::Palette:
        case Colours::Grey:
        case Colours::Heights:
        case Colours::Unknown:
            return 1;
    }
    return 1;
}

std::vector<std::uint32_t> Inks::mixed(const std::vector<std::uint8_t>& bytes) const {
    const auto each = static_cast<std::size_t>(bands());
    std::vector<std::uint32_t> rgb(bytes.size() / each);
    const auto all = [&](auto colour) {
        const std::uint8_t* from = bytes.data();
        for (std::uint32_t& pixel : rgb) {
            pixel = colour(from);
            from += each;
        }
    };
    switch (colours) {
        case Colours::Palette:
            all([&](const std::uint8_t* b) { return palette[b[0]]; });
            break;
        case Colours::GreyAlpha:
            all([](const std::uint8_t* b) { return onWhite(b[0], b[0], b[0], b[1]); });
            break;
        case Colours::Rgb:
            all([](const std::uint8_t* b) { return opaque(b[0], b[1], b[2]); });
            break;
        case Colours::Rgba:
            all([](const std::uint8_t* b) { return onWhite(b[0], b[1], b[2], b[3]); });
            break;
        case Colours::Cmyk:
            all([](const std::uint8_t* b) { return printed(b[0], b[1], b[2], b[3]); });
            break;
        case Colours::Grey:
        case Colours::Heights:
        case Colours::Unknown:
            all([](const std::uint8_t* b) { return opaque(b[0], b[0], b[0]); });
            break;
    }
    return rgb;
}

Inks inksOf(GDALDataset& dataset) {
    const sheets::QuietGdal quiet;
    Inks inks;
    inks.colours = coloursOf(dataset);
    GDALRasterBand& first = *dataset.GetRasterBand(1);
    if (inks.colours == Colours::Palette) {
        inks.palette = paletteOf(first);
    } else {
        inks.tones = tonesOf(first);
    }
    return inks;
}

}  // namespace crosstick::reading
