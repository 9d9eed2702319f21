#include "ui/ledger/legs_model.h"

#include "core/movement/pace.h"
#include "ui/look/theme.h"

namespace crosstick::ledger {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

QString whole(const std::optional<std::int64_t>& value) {
    return value ? QString::number(*value) : QString();
}

/// Azimuths of a leg's pieces, bend by bend.
QString azimuths(const movement::PaperLeg& leg, std::string movement::PaperPiece::*which) {
    QStringList all;
    for (const movement::PaperPiece& piece : leg.pieces) {
        all << text(piece.*which);
    }
    return all.join(QStringLiteral(", "));
}

}  // namespace

LegsModel::LegsModel(work::Work& work, std::function<QString(const Error&)> say, QObject* parent)
    : QAbstractTableModel(parent), work_(work), say_(std::move(say)) {}

void LegsModel::setRows(Rows rows) {
    rowsAre_ = rows;
    renew();
}

void LegsModel::listLines() {
    lines_.clear();
    for (std::size_t leg = 0; paper_ && leg < paper_->legs.size(); ++leg) {
        const std::size_t pieces = paper_->legs[leg].pieces.size();
        if (rowsAre_ == Rows::Legs || pieces < 2) {
            lines_.push_back({leg, std::nullopt, true});
            continue;
        }
        for (std::size_t piece = 0; piece < pieces; ++piece) {
            lines_.push_back({leg, piece, piece + 1 == pieces});
        }
    }
}

std::optional<std::size_t> LegsModel::legAt(int row) const {
    return row >= 0 && row < static_cast<int>(lines_.size()) ? std::optional(lines_[static_cast<std::size_t>(row)].leg)
                                                             : std::nullopt;
}

std::optional<int> LegsModel::rowTo(const plan::ItemId& point) const {
    for (std::size_t n = 0; figures_ && n < lines_.size(); ++n) {
        if (lines_[n].isLast && figures_->legs[lines_[n].leg].to == point) {
            return static_cast<int>(n);
        }
    }
    return std::nullopt;
}

void LegsModel::renew() {
    beginResetModel();
    paper_.reset();
    figures_.reset();
    fault_.reset();
    if (const plan::RoutePtr route = work_.isOpen() ? work_.ledgerRoute() : nullptr) {
        const plan::Plan& plan = work_.wetPlan() ? *work_.wetPlan() : work_.plan();
        auto figures = work_.figuresOf(plan, *route);
        if (figures) {
            auto paper = movement::paperFigures(plan, *figures, work_.angles());
            if (paper) {
                paper_ = std::move(*paper);
                figures_ = std::move(*figures);
            } else {
                fault_ = paper.error();
            }
        } else {
            fault_ = figures.error();
        }
    }
    listLines();
    endResetModel();
}

bool LegsModel::isLive(int row) const {
    const auto leg = legAt(row);
    return leg && (work_.wetPlan() ? *leg + 1 == paper_->legs.size()
                                   : work_.selected() && figures_->legs[*leg].to == *work_.selected());
}

int LegsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !paper_ ? 0 : static_cast<int>(lines_.size()) + 1;
}

int LegsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kColumns;
}

QString LegsModel::total(int column) const {
    switch (column) {
        case To:
            return tr("All legs");
        case Tie:
            return text(paper_->startLabel + (paper_->startTime.empty() ? "" : ' ' + paper_->startTime));
        case Distance:
            return QString::number(paper_->metres);
        case Paces:
            return whole(paper_->paces);
        case Time:
            return text(paper_->time);
        case Arrive:
            return text(paper_->arrival);
        case Climb:
            return whole(paper_->climb);
        default:
            return {};
    }
}

/// "2a", "2b", then by number: what one bend of a leg has of its own.
QString LegsModel::pieceCell(const Line& line, int column) const {
    const movement::PaperLeg& leg = paper_->legs[line.leg];
    const movement::PaperPiece& piece = leg.pieces[*line.piece];
    switch (column) {
        case Leg:
            return QString::number(leg.number) + (*line.piece < 26
                                                      ? QString(QChar(u'a' + static_cast<char16_t>(*line.piece)))
                                                      : QStringLiteral(".%1").arg(*line.piece + 1));
        case To:
            return line.isLast ? text(leg.to) : tr("bend");
        case Tie:
            return line.isLast ? text(leg.tie) : text(piece.toGrid);
        case Azimuth:
            return text(piece.magnetic);
        case BackAzimuth:
            return text(piece.backMagnetic);
        case GridAzimuth:
            return text(piece.grid);
        case Distance:
            return QString::number(piece.metres);
        case Paces:
            return whole(piece.paces);
        default:
            return {};
    }
}

QString LegsModel::cell(int row, int column) const {
    const Line& line = lines_[static_cast<std::size_t>(row)];
    const movement::PaperLeg& leg = paper_->legs[line.leg];
    const bool isPieces = column < Time || column == BackAzimuth || column == GridAzimuth;
    if (line.piece && isPieces) {
        return pieceCell(line, column);
    }
    if (!line.isLast) {
        return {};
    }
    switch (column) {
        case Leg:
            return QString::number(leg.number);
        case To:
            return text(leg.to);
        case Tie:
            return work_.wetPlan() && isLive(row) ? tr("drawing") : text(leg.tie);
        case Azimuth:
            return azimuths(leg, &movement::PaperPiece::magnetic);
        case BackAzimuth:
            return azimuths(leg, &movement::PaperPiece::backMagnetic);
        case GridAzimuth:
            return azimuths(leg, &movement::PaperPiece::grid);
        case Distance:
            return QString::number(leg.metres);
        case Paces:
            return whole(leg.paces);
        case Time:
            return text(leg.time);
        case Arrive:
            return text(leg.arrival);
        case Climb:
            return whole(leg.climb);
        default:
            return {};
    }
}

std::optional<Gap> LegsModel::gap(int row, int column) const {
    const bool isWithin = !isTotal(row) && !lines_[static_cast<std::size_t>(row)].isLast && column != Paces;
    if (isWithin || !(isTotal(row) ? total(column) : cell(row, column)).isEmpty()) {
        return std::nullopt;
    }
    if (figures_->use == plan::Use::Vehicle && (column == Paces || column == Time || column == Arrive)) {
        return Gap{QStringLiteral("\u2014"), tr("A vehicle has neither paces nor a time on foot."), {}};
    }
    switch (column) {
        case Paces:
            return noPaces();
        case Time:
            return noTime();
        case Arrive:
            return noArrival(*figures_);
        case Climb:
            return noClimb(work_, say_);
        default:
            return std::nullopt;
    }
}

std::optional<Want> LegsModel::wantAt(const QModelIndex& at) const {
    const auto missing = paper_ && at.isValid() ? gap(at.row(), at.column()) : std::nullopt;
    return missing ? missing->want : std::nullopt;
}

QVariant LegsModel::data(const QModelIndex& index, int role) const {
    if (!paper_ || !index.isValid()) {
        return {};
    }
    const bool isWords = index.column() == To || index.column() == Tie;
    switch (role) {
        case Qt::DisplayRole:
        case Qt::AccessibleTextRole: {
            const auto missing = gap(index.row(), index.column());
            return missing                ? missing->word
                   : isTotal(index.row()) ? total(index.column())
                                          : cell(index.row(), index.column());
        }
        case kGapRole:
            return gap(index.row(), index.column()).has_value();
        case Qt::TextAlignmentRole:
            return QVariant(Qt::AlignVCenter | (isWords ? Qt::AlignLeft : Qt::AlignRight));
        case Qt::FontRole:
            return gap(index.row(), index.column())
                       ? look::face(12)
                       : look::face(13, isTotal(index.row()) || isLive(index.row()) || index.column() == To
                                            ? look::Weight::Bold
                                            : look::Weight::Regular);
        case Qt::ToolTipRole:
        case Qt::AccessibleDescriptionRole:
            return hint(index);
        default:
            return {};
    }
}

QString LegsModel::hint(const QModelIndex& index) const {
    if (const auto missing = gap(index.row(), index.column())) {
        return missing->want ? missing->why + QLatin1Char(' ') + tr("Press here to give it.") : missing->why;
    }
    if (index.column() == Climb && paper_->fromContours) {
        return tr("read from contours by hand, even between them");
    }
    const auto at = legAt(index.row());
    if (!at) {
        return {};
    }
    const movement::Leg& leg = figures_->legs[*at];
    if (index.column() == Paces && leg.paces && leg.groundDistance > Metres(0)) {
        const movement::Beads beads =
            movement::beadsFor(leg.groundDistance, *leg.paces * 100 / leg.groundDistance.value());
        return tr("the whole leg with beads: %n pulled, then %1 double paces", nullptr, beads.pulled)
            .arg(beads.doublePacesAfter, 0, 'f', 0);
    }
    if (index.column() != Distance) {
        return {};
    }
    const auto exact = [](const auto& lies) {
        return tr("map %1 m, ground %2 m")
            .arg(lies.mapDistance.value(), 0, 'f', 2)
            .arg(lies.groundDistance.value(), 0, 'f', 2);
    };
    const auto& piece = lines_[static_cast<std::size_t>(index.row())].piece;
    return piece ? exact(leg.pieces[*piece]) : exact(leg);
}

QVariant LegsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        return QVariant(Qt::AlignVCenter | (section == To || section == Tie ? Qt::AlignLeft : Qt::AlignRight));
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    const bool mils = work_.angles() == geodesy::AngleUnit::Mils;
    switch (section) {
        case Leg:
            return tr("Leg");
        case To:
            return tr("To");
        case Tie:
            return tr("Tie");
        case Azimuth:
            return mils ? tr("Mag. azimuth, mils") : tr("Mag. azimuth °");
        case BackAzimuth:
            return tr("Back, mag.");
        case GridAzimuth:
            return tr("Grid azimuth");
        case Distance:
            return tr("Distance m");
        case Paces:
            return tr("Paces");
        case Time:
            return tr("Time");
        case Arrive:
            return tr("Arrive");
        case Climb:
            return paper_ && paper_->fromContours ? tr("Climb m, contours") : tr("Climb m");
        default:
            return {};
    }
}

}  // namespace crosstick::ledger
