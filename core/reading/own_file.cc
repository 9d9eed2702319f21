#include "core/reading/own_file.h"

#include <cpl_error.h>
#include <gdal_priv.h>

#include "core/sheets/faults.h"

namespace crosstick::reading {

Error OwnFile::noRoom(const sheets::QuietGdal& quiet) const {
    return Error{sheets::kNoRoom, {{"file", path.string()}, {"why", quiet.lastWords(path)}}};
}

Result<void> OwnFile::finish() {
    const sheets::QuietGdal quiet;
    dataset->FlushCache(true);
    if (CPLGetLastErrorType() >= CE_Failure) {
        return tl::unexpected(noRoom(quiet));
    }
    dataset.reset();
    return {};
}

}  // namespace crosstick::reading
