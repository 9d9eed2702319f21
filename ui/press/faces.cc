#include "ui/press/faces.h"

#include <QFile>
#include <QFont>
#include <QFontDatabase>
#include <QString>
#include <QStringList>
#include <QTransform>

#include "ui/press/faults.h"
#include "ui/press/own_family.h"

namespace crosstick::press {
namespace {

std::size_t index(drawing::Face face) {
    return face == drawing::Face::Main ? 0 : 1;
}

std::size_t index(drawing::Weight weight) {
    return weight == drawing::Weight::Regular ? 0 : 1;
}

constexpr const char* kFiles[2][2] = {{"B612-Regular.otf", "B612-Bold.otf"}, {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"}};

/// A face by way of the font database: only of such a one does the PDF engine embed letters as letters; one that is
/// loaded from its file directly is printed as outlines.
QRawFont loaded(const std::filesystem::path& path) {
    QFile file(QString::fromStdString(path.string()));
    if (!file.open(QIODevice::ReadOnly | QIODevice::Unbuffered)) {
        return {};
    }
    const std::string title = path.stem().string();
    const QByteArray font = underOwnFamily(file.readAll(), "Crosstick " + title, title);
    const QStringList families =
        QFontDatabase::applicationFontFamilies(QFontDatabase::addApplicationFontFromData(font));
    if (families.isEmpty()) {
        return {};
    }
    QFont wanted(families.front());
    wanted.setPixelSize(static_cast<int>(Faces::kSize));
    wanted.setHintingPreference(QFont::PreferNoHinting);
    wanted.setStyleStrategy(QFont::NoFontMerging);
    return QRawFont::fromFont(wanted);
}

}  // namespace

Result<Faces> Faces::open(const std::filesystem::path& folder, WideFace wide) {
    std::error_code ignored;
    Faces faces;
    faces.folder_ = folder;
    for (std::size_t face = 0; face < 2; ++face) {
        for (std::size_t weight = 0; weight < 2; ++weight) {
            const std::filesystem::path file = folder / kFiles[face][weight];
            QRawFont& font = faces.fonts_[face][weight];
            const bool waits = wide == WideFace::WhenNeeded && face == index(drawing::Face::Wide);
            font = waits ? QRawFont() : loaded(file);
            if (waits ? !std::filesystem::exists(file, ignored) : !font.isValid()) {
                return fail(kNoFace, {{"file", file.string()}});
            }
        }
    }
    return faces;
}

const QRawFont& Faces::font(drawing::Face face, drawing::Weight weight) const {
    QRawFont& font = fonts_[index(face)][index(weight)];
    if (!font.isValid()) {
        font = loaded(folder_ / kFiles[index(face)][index(weight)]);
    }
    return font;
}

const QRawFont& Faces::sized(drawing::Face face, drawing::Weight weight, double pixels) const {
    const auto [held, isNew] = sized_.try_emplace({face, weight, pixels});
    if (isNew) {
        // Not a copy of the large one: the font engine they would share rounds outlines by the size it was asked last.
        const auto file = folder_ / kFiles[index(face)][index(weight)];
        held->second = QRawFont(QString::fromStdString(file.string()), pixels, QFont::PreferNoHinting);
    }
    return held->second;
}

quint32 Faces::glyph(char32_t letter, drawing::Face face, drawing::Weight weight) const {
    const auto glyphs = font(face, weight).glyphIndexesForString(QString::fromUcs4(&letter, 1));
    return glyphs.isEmpty() ? 0 : glyphs.front();
}

double Faces::advance(char32_t letter, drawing::Face face, drawing::Weight weight) const {
    const QList<quint32> glyphs{glyph(letter, face, weight)};
    const auto advances = font(face, weight).advancesForGlyphIndexes(glyphs, QRawFont::SeparateAdvances);
    return advances.isEmpty() ? 0 : advances.front().x() / kSize;
}

QPainterPath Faces::outlines(const drawing::Text& text) const {
    const double size = text.capHeight / drawing::kCapital;
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (const drawing::GlyphPlace& place : drawing::setRow(text.text, text.weight)) {
        const quint32 number = glyph(place.letter, place.face, text.weight);
        const QTransform toPaper = QTransform::fromTranslate(place.at * size, 0).scale(size / kSize, size / kSize);
        path.addPath(toPaper.map(font(place.face, text.weight).pathForGlyph(number)));
    }
    return path;
}

}  // namespace crosstick::press
