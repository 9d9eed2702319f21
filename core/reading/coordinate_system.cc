#include "core/reading/coordinate_system.h"

#include <array>

#include <cpl_conv.h>
#include <ogr_spatialref.h>

namespace crosstick::reading {
namespace {

constexpr int kSureMatch = 90;  // PROJ's per cent: same definition, at most another name

/// The "EPSG:n" that PROJ finds for a definition without a number, where it is sure.
std::string identified(const OGRSpatialReference& reference) {
    int count = 0;
    int* confidences = nullptr;
    OGRSpatialReferenceH* matches = OSRFindMatches(
        OGRSpatialReference::ToHandle(const_cast<OGRSpatialReference*>(&reference)), nullptr, &count, &confidences);
    std::string found;
    if (count > 0 && confidences[0] >= kSureMatch && (count == 1 || confidences[1] < confidences[0])) {
        const OGRSpatialReference* best = OGRSpatialReference::FromHandle(matches[0]);
        const char* authority = best->GetAuthorityName(nullptr);
        const char* code = best->GetAuthorityCode(nullptr);
        if (authority != nullptr && code != nullptr && EQUAL(authority, "EPSG")) {
            found = std::string("EPSG:") + code;
        }
    }
    OSRFreeSRSArray(matches);
    CPLFree(confidences);
    return found;
}

}  // namespace

std::string crsText(const OGRSpatialReference* reference) {
    if (reference == nullptr || reference->IsEmpty() || reference->IsLocal() != 0) {
        return {};
    }
    OGRSpatialReference own(*reference);
    if (own.IsCompound() != 0) {
        own.StripVertical();
    }
    const char* authority = own.GetAuthorityName(nullptr);
    const char* code = own.GetAuthorityCode(nullptr);
    if (authority != nullptr && code != nullptr) {
        return std::string(authority) + ":" + code;
    }
    if (std::string number = identified(own); !number.empty()) {
        return number;
    }
    char* wkt = nullptr;
    const std::array<const char*, 2> options{"FORMAT=WKT2_2019", nullptr};
    own.exportToWkt(&wkt, options.data());
    std::string text = wkt == nullptr ? std::string{} : std::string(wkt);
    CPLFree(wkt);
    return text;
}

std::string verticalName(const OGRSpatialReference* reference) {
    const char* name = reference == nullptr ? nullptr : reference->GetAttrValue("VERT_CS");
    return name == nullptr ? std::string{} : std::string(name);
}

double verticalUnit(const OGRSpatialReference* reference) {
    if (reference == nullptr || reference->GetAttrNode("VERT_CS") == nullptr) {
        return 0;
    }
    return reference->GetTargetLinearUnits("VERT_CS");
}

}  // namespace crosstick::reading
