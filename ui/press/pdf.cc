#include "ui/press/pdf.h"

#include <cerrno>
#include <cstring>
#include <fstream>
#include <system_error>

#include <unistd.h>

#include <QBuffer>
#include <QByteArray>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "ui/press/faults.h"
#include "ui/press/pdf_dress.h"

namespace crosstick::press {
namespace {

constexpr int kDotsPerInch = 1200;
constexpr double kDotsPerMm = kDotsPerInch / 25.4;

QPageLayout layoutOf(const film::Paper& paper) {
    const QPageSize size(QSizeF(paper.width.value(), paper.height.value()), QPageSize::Millimeter, QString(),
                         QPageSize::ExactMatch);
    return {size, QPageLayout::Portrait, QMarginsF(0, 0, 0, 0)};
}

}  // namespace

struct PdfPainting::Desk {
    Brushes brushes;
    QByteArray bytes;
    QBuffer buffer{&bytes};
    std::optional<QPdfWriter> writer;  ///< from the first page on, whose paper it needs
    QPainter painter;
    std::vector<PdfPage> pages;  ///< without their drawings

    explicit Desk(const Brushes& given) : brushes(given) { buffer.open(QIODevice::WriteOnly); }

    void begin(const film::Paper& paper) {
        writer.emplace(&buffer);
        writer->setResolution(kDotsPerInch);
        writer->setPageLayout(layoutOf(paper));
        painter.begin(&*writer);
        painter.scale(kDotsPerMm, kDotsPerMm);
    }
};

PdfPainting::PdfPainting(const Faces& faces, const Inks& inks)
    : desk_(std::make_unique<Desk>(Brushes{faces, inks, Letters::AsText, HaloRule::LeftOut})) {}
PdfPainting::~PdfPainting() = default;

void PdfPainting::add(const PdfPage& page) {
    if (desk_->pages.empty()) {
        desk_->begin(page.paper);
    } else {
        desk_->writer->setPageLayout(layoutOf(page.paper));
        desk_->writer->newPage();
    }
    paint(desk_->painter, page.drawing, desk_->brushes);
    desk_->pages.push_back({page.paper, {}, page.layer, page.ground});
}

Result<std::string> PdfPainting::finished(const PdfFacts& facts) && {
    if (desk_->pages.empty()) {
        return fail(kNoPages);
    }
    desk_->painter.end();
    desk_->writer.reset();
    return dressed({desk_->bytes.constData(), static_cast<std::size_t>(desk_->bytes.size())}, desk_->pages, facts);
}

Result<std::string> pdfBytes(const std::vector<PdfPage>& pages, const PdfFacts& facts, const Faces& faces,
                             const Inks& inks) {
    PdfPainting painting(faces, inks);
    for (const PdfPage& page : pages) {
        painting.add(page);
    }
    return std::move(painting).finished(facts);
}

Result<void> writeWhole(const std::filesystem::path& file, const std::string& bytes) {
    const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    std::error_code trouble;
    if (!std::filesystem::is_directory(folder, trouble)) {
        return fail(kFolderMissing, {{"folder", folder.string()}});
    }
    const auto refused = [&](int number) {
        return fail(kCannotWrite, {{"file", file.string()}, {"why", std::generic_category().message(number)}});
    };
    const std::filesystem::path draft = folder / ("." + file.filename().string() + "." + std::to_string(getpid()));
    errno = 0;
    {
        std::ofstream out(draft, std::ios::binary | std::ios::trunc);
        out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        out.close();
        if (!out) {
            const int number = errno;
            std::filesystem::remove(draft, trouble);
            return refused(number == 0 ? EIO : number);
        }
    }
    std::filesystem::rename(draft, file, trouble);
    if (trouble) {
        const int number = trouble.value();
        std::filesystem::remove(draft, trouble);
        return refused(number);
    }
    return {};
}

}  // namespace crosstick::press
