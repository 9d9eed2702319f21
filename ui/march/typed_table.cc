#include "ui/march/typed_table.h"

#include <algorithm>

#include "ui/march/faults.h"

namespace crosstick::march {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

bool sameHeads(const std::vector<TypedTable::Head>& a, const std::vector<TypedTable::Head>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const auto& one, const auto& other) { return one.words == other.words; });
}

}  // namespace

QStringList TypedTable::choices(int /*row*/, int /*field*/) const {
    return {};
}

QString TypedTable::hint(int /*row*/, int /*field*/) const {
    return {};
}

/// An editor that is open in a cell stays where rows and columns stay.
void TypedTable::renew() {
    const plan::Force before = std::exchange(force_, work_.isOpen() ? work_.plan().force() : plan::Force{});
    std::vector<Head> heads = headsNow();
    const bool isOther = !sameHeads(heads, heads_) || force_.elements.size() != before.elements.size() ||
                         force_.events.size() != before.events.size();
    if (isOther) {
        beginResetModel();
    }
    heads_ = std::move(heads);
    rows_ = read();
    if (isOther) {
        endResetModel();
    } else if (rows_ > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rows_ - 1, columnCount() - 1));
    }
}

void TypedTable::commit(plan::Force force, const char* caption) {
    work_.commit(std::move(plan::PlanBuilder(work_.committed()).force(std::move(force))).build(), caption);
    renew();
    Q_EMIT taken();
}

int TypedTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rows_;
}

int TypedTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(heads_.size());
}

QVariant TypedTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rows_ || index.column() >= columnCount()) {
        return {};
    }
    switch (role) {
        case Qt::DisplayRole:
            return cell(index.row(), index.column());
        case Qt::EditRole:
            return toType(index.row(), index.column());
        case Qt::ToolTipRole:
            return hint(index.row(), index.column());
        case Qt::TextAlignmentRole:
            return headerData(index.column(), Qt::Horizontal, role);
        default:
            return {};
    }
}

QVariant TypedTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) {
        return {};
    }
    const Head& head = heads_[static_cast<std::size_t>(section)];
    if (role == Qt::TextAlignmentRole) {
        return QVariant(Qt::AlignVCenter | (head.isNumber ? Qt::AlignRight : Qt::AlignLeft));
    }
    return role == Qt::DisplayRole ? QVariant(head.words) : QVariant();
}

Qt::ItemFlags TypedTable::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    return index.isValid() && isTyped(index.row(), index.column()) ? flags | Qt::ItemIsEditable : flags;
}

bool TypedTable::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid() || index.row() >= rows_) {
        return false;
    }
    const QString words = value.toString().trimmed();
    if (words == toType(index.row(), index.column())) {
        return true;
    }
    auto next = typed(index.row(), index.column(), words.toStdString());
    if (!next) {
        Q_EMIT refused(next.error());
        return false;
    }
    const std::string caption =
        "change " + heads_[static_cast<std::size_t>(index.column())].words.toLower().toStdString();
    commit(std::move(*next), caption.c_str());
    return true;
}

Result<std::optional<Uuid>> elementTyped(const plan::Force& force, const std::string& typed) {
    if (typed.empty()) {
        return std::optional<Uuid>{};
    }
    std::string known;
    for (const plan::Element& element : force.elements) {
        if (text(element.name).compare(text(typed), Qt::CaseInsensitive) == 0 ||
            (!element.callSign.empty() && text(element.callSign).compare(text(typed), Qt::CaseInsensitive) == 0)) {
            return std::optional(element.id);
        }
        known += (known.empty() ? "" : ", ") + element.name;
    }
    return fail(kNoSuchElement, {{"typed", typed}, {"known", known.empty() ? "none yet" : known}});
}

QString nameOf(const plan::Force& force, const std::optional<Uuid>& element) {
    const plan::Element* held = element ? force.element(*element) : nullptr;
    return held == nullptr ? QString() : text(held->name.empty() ? held->unit : held->name);
}

QStringList elementNames(const plan::Force& force) {
    QStringList names;
    for (const plan::Element& element : force.elements) {
        names << text(element.name);
    }
    return names;
}

}  // namespace crosstick::march
