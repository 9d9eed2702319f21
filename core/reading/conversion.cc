#include "core/reading/conversion.h"

#include <algorithm>

#include <gdal.h>

#include "core/reading/foreign_raster.h"
#include "core/reading/inspection.h"
#include "core/reading/pyramid_writer.h"

namespace crosstick::reading {
namespace {

/// Rows at once: buffers so small that the heap hands out the same again. New pages cost more than the reading.
constexpr int kStrip = 128;

}  // namespace

Result<void> copySheet(const sheets::messages::Order& order, const Show& show, const Tell& tell) {
    auto raster = ForeignRaster::open(order.file);
    if (!raster) {
        return tl::unexpected(raster.error());
    }
    if (raster->orientation() >= 5) {
        // Its rows are stored as columns: each strip touches all of the file, which is decoded once only if it is kept.
        GDALSetCacheMax64(GIntBig{768} << 20);
    }
    if (order.picture > 0) {
        if (auto shown = raster->glance(order.picture, show); !shown) {
            return shown;
        }
    }
    const auto packing = sheets::packingFor(raster->inks().colours, losesSomething(raster->dataset()),
                                            raster->columns(), raster->rows());
    auto writer = PyramidWriter::create(order.out, raster->columns(), raster->rows(), packing);
    if (!writer) {
        return tl::unexpected(writer.error());
    }
    const int atOnce = raster->rowsAtOnce(kStrip);
    for (int row = 0; row < raster->rows(); row += atOnce) {
        const int count = std::min(atOnce, raster->rows() - row);
        const auto strip = raster->read({0, row, raster->columns(), count});
        if (!strip) {
            return tl::unexpected(strip.error());
        }
        if (auto added = writer->addRows(*strip); !added) {
            return added;
        }
        tell({row + count, raster->rows()});
    }
    return std::move(*writer).finish();
}

}  // namespace crosstick::reading
