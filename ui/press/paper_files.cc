#include <QBuffer>
#include <QImage>
#include <QPainter>

#include "ui/press/faults.h"
#include "ui/press/gui_start.h"
#include "ui/press/paper_head.h"
#include "ui/press/pdf.h"

namespace crosstick::press {

Result<std::string> pagesPdf(const std::vector<PaperPage>& pages, const std::string& kind, const plan::Heading& heading,
                             const std::filesystem::path& faces, Instant now) {
    const GuiStart gui;
    const auto opened = Faces::open(faces);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    std::vector<PdfPage> all;
    for (const PaperPage& page : pages) {
        PdfPage next;
        next.paper = page.paper;
        next.drawing = page.drawing;
        all.push_back(std::move(next));
    }
    const PdfFacts facts{joined({heading.name, kind}, ", "), heading.author, heading.marking,
                         heading.prepared.value_or(now)};
    return pdfBytes(all, facts, *opened, onePenInks());
}

Result<std::string> pagePng(const PaperPage& page, int dotsPerInch, const std::filesystem::path& faces) {
    constexpr double kInch = 25.4;
    const GuiStart gui;
    const auto opened = Faces::open(faces);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    const auto dots = [&](PaperMm side) { return static_cast<int>(std::lround(side.value() * dotsPerInch / kInch)); };
    QImage image(dots(page.paper.width), dots(page.paper.height), QImage::Format_RGB32);
    if (image.isNull()) {
        return fail(kNoPages);
    }
    image.fill(Qt::white);
    image.setDotsPerMeterX(static_cast<int>(std::lround(dotsPerInch * 1000 / kInch)));
    image.setDotsPerMeterY(image.dotsPerMeterX());
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(dotsPerInch / kInch, dotsPerInch / kInch);
    paint(painter, page.drawing, Brushes{*opened, onePenInks(), Letters::AsOutlines, HaloRule::LeftOut});
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return std::string(bytes.constData(), static_cast<std::size_t>(bytes.size()));
}

}  // namespace crosstick::press
