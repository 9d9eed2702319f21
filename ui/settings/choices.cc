#include "ui/settings/choices.h"

#include <algorithm>
#include <vector>

#include <QRegularExpression>

#include "core/units/time.h"

namespace crosstick::settings {
namespace {

// Names in the file: they stay as they are, since files of older versions have them.
const QString kAngles = QStringLiteral("choices/azimuths");
const QString kSizes = QStringLiteral("choices/sizes");
const QString kMarking = QStringLiteral("choices/marking");
const QString kAuthor = QStringLiteral("choices/author");
const QString kUnit = QStringLiteral("choices/unit");
const QString kZone = QStringLiteral("choices/zone");
const QString kOpens = QStringLiteral("choices/opens");
const QString kDimming = QStringLiteral("dimming");
const QString kCache = QStringLiteral("choices/cacheGigabytes");
const QString kInserted = QStringLiteral("insertedNumbers");
const QString kSnapLines = QStringLiteral("choices/drawnToLines");
const QString kSnapGrid = QStringLiteral("choices/drawnToGrid");
const QString kHandrail = QStringLiteral("choices/handrail");
const QString kYes = QStringLiteral("true");
const QString kLettered = QStringLiteral("lettered");
const QString kMils = QStringLiteral("mils");
const QString kDay = QStringLiteral("day");
const QString kNight = QStringLiteral("night");

int within(const QVariant& value, int usual, int least, int most) {
    bool isNumber = false;
    const int number = value.toInt(&isNumber);
    return isNumber ? std::clamp(number, least, most) : usual;
}

}  // namespace

Choices read(const QSettings& from) {
    Choices choices;
    choices.angles = from.value(kAngles).toString() == kMils ? geodesy::AngleUnit::Mils : geodesy::AngleUnit::Degrees;
    choices.gauge = sizesTyped(from.value(kSizes).toStringList().join(QLatin1Char(','))).value_or(drawing::Gauge{});
    choices.marking = from.value(kMarking).toString();
    choices.author = from.value(kAuthor).toString();
    choices.unit = from.value(kUnit).toString();
    const std::string letter = from.value(kZone).toString().toStdString();
    choices.zone = letter.size() == 1 && timeZone(letter.front()) ? timeZone(letter.front())->letter : choices.zone;
    using Wish = drafting::SnapWish;
    choices.inserted = from.value(kInserted).toString() == kLettered ? plan::Inserted::Lettered : choices.inserted;
    choices.snap = {from.value(kSnapLines).toString() == kYes ? Wish::Lines::Yes : Wish::Lines::No,
                    from.value(kSnapGrid).toString() == kYes ? Wish::Grid::Yes : Wish::Grid::No};
    choices.handrail =
        Metres(within(from.value(kHandrail), static_cast<int>(choices.handrail.value()),
                      static_cast<int>(kLeastHandrail.value()), static_cast<int>(kMostHandrail.value())));
    const QString opens = from.value(kOpens).toString();
    choices.opens = opens == kDay ? Opens::ByDay : opens == kNight ? Opens::ByNight : Opens::AsLeft;
    choices.dimming = within(from.value(kDimming), choices.dimming, 1, 6);
    choices.cacheGigabytes = within(from.value(kCache), choices.cacheGigabytes, kLeastCache, kMostCache);
    return choices;
}

void write(const Choices& choices, QSettings& to) {
    to.setValue(kAngles, choices.angles == geodesy::AngleUnit::Mils ? kMils : QStringLiteral("degrees"));
    to.setValue(kSizes, sizesShown(choices.gauge).split(QStringLiteral(", ")));
    to.setValue(kMarking, choices.marking);
    to.setValue(kAuthor, choices.author);
    to.setValue(kUnit, choices.unit);
    to.setValue(kZone, QString(QLatin1Char(choices.zone)));
    to.setValue(kInserted, choices.inserted == plan::Inserted::Lettered ? kLettered : QStringLiteral("next"));
    to.setValue(kSnapLines, choices.snap.lines == drafting::SnapWish::Lines::Yes ? kYes : QString());
    to.setValue(kSnapGrid, choices.snap.grid == drafting::SnapWish::Grid::Yes ? kYes : QString());
    to.setValue(kHandrail, static_cast<int>(choices.handrail.value()));
    to.setValue(kOpens, choices.opens == Opens::ByDay     ? kDay
                        : choices.opens == Opens::ByNight ? kNight
                                                          : QStringLiteral("as left"));
    to.setValue(kDimming, choices.dimming);
    to.setValue(kCache, choices.cacheGigabytes);
}

QString sizesShown(const drawing::Gauge& gauge) {
    return QStringLiteral("%1, %2, %3").arg(gauge.symbol).arg(gauge.pen).arg(gauge.letters);
}

std::optional<drawing::Gauge> sizesTyped(const QString& typed) {
    std::vector<double> sizes;
    for (const QString& part : typed.split(QRegularExpression(QStringLiteral("[,;\\s]+")), Qt::SkipEmptyParts)) {
        bool isNumber = false;
        sizes.push_back(part.toDouble(&isNumber));
        if (!isNumber) {
            return std::nullopt;
        }
    }
    if (sizes.size() != 3) {
        return std::nullopt;
    }
    const auto gauge = drawing::Gauge::of(sizes[0], sizes[1], sizes[2]);
    const bool isInside = gauge.symbol == sizes[0] && gauge.pen == sizes[1] && gauge.letters == sizes[2];
    return isInside ? std::optional(gauge) : std::nullopt;
}

}  // namespace crosstick::settings
