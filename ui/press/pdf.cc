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

std::string paintedPages(const std::vector<PdfPage>& pages, const Faces& faces, const Inks& inks) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(kDotsPerInch);
        writer.setPageLayout(layoutOf(pages.front().paper));
        QPainter painter(&writer);
        painter.scale(kDotsPerMm, kDotsPerMm);
        const Brushes brushes{faces, inks, Letters::AsText, HaloRule::LeftOut};
        for (std::size_t n = 0; n < pages.size(); ++n) {
            if (n > 0) {
                writer.setPageLayout(layoutOf(pages[n].paper));
                writer.newPage();
            }
            paint(painter, pages[n].drawing, brushes);
        }
    }
    return bytes.toStdString();
}

}  // namespace

Result<std::string> pdfBytes(const std::vector<PdfPage>& pages, const PdfFacts& facts, const Faces& faces,
                             const Inks& inks) {
    if (pages.empty()) {
        return fail(kNoPages);
    }
    return dressed(paintedPages(pages, faces, inks), pages, facts);
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
