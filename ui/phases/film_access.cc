#include "ui/phases/film_access.h"

#include <map>

#include <QAccessible>
#include <QAccessibleWidget>
#include <QCoreApplication>
#include <QPointer>

#include "core/measures/catalogue.h"
#include "core/movement/paper_figures.h"
#include "core/plan/edits.h"
#include "ui/phases/film_button.h"

namespace crosstick::phases {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("FilmAccess", words);
}

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// One thing on one film. It knows the film's button and the thing's identity, never the thing: that changes with
/// every edit, and may go.
class ThingAccess final : public QAccessibleInterface, public QAccessibleActionInterface {
  public:
    ThingAccess(FilmButton* film, const plan::ItemId& item) : film_(film), item_(item) {}
    [[nodiscard]] const plan::ItemId& item() const { return item_; }

    bool isValid() const override {
        const plan::FilmPtr film = film_ ? film_->work().plan().film(film_->film()) : nullptr;
        return film && plan::isShownOn(*film, item_);
    }
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* childAt(int /*x*/, int /*y*/) const override { return nullptr; }
    QAccessibleInterface* parent() const override { return QAccessible::queryAccessibleInterface(film_.data()); }
    QAccessibleInterface* child(int /*index*/) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface* /*child*/) const override { return -1; }
    QString text(QAccessible::Text kind) const override {
        if (!isValid()) {
            return {};
        }
        return kind == QAccessible::Name          ? thingSpoken(film_->work(), item_)
               : kind == QAccessible::Description ? thingPlaced(film_->work(), item_)
                                                  : QString();
    }
    void setText(QAccessible::Text /*kind*/, const QString& /*text*/) override {}
    QRect rect() const override {
        const QAccessibleInterface* film = parent();
        return film != nullptr ? film->rect() : QRect();
    }
    QAccessible::Role role() const override { return QAccessible::ListItem; }
    QAccessible::State state() const override {
        QAccessible::State state;
        state.selectable = true;
        state.selected = isValid() && film_->work().selected() == item_;
        state.invalid = !isValid();
        return state;
    }
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }
    QStringList actionNames() const override { return {pressAction()}; }
    void doAction(const QString& name) override {
        if (name == pressAction() && isValid()) {
            film_->work().select(item_);
        }
    }
    QStringList keyBindingsForAction(const QString& /*name*/) const override { return {}; }

  private:
    QPointer<FilmButton> film_;
    plan::ItemId item_;
};

/// A film's tab or card, with the things on the film as its entries before whatever else stands in it.
class FilmAccess final : public QAccessibleWidget {
  public:
    explicit FilmAccess(FilmButton* film) : QAccessibleWidget(film, QAccessible::ListItem), film_(film) {}
    ~FilmAccess() override {
        for (const auto& [item, id] : things_) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }
    FilmAccess(const FilmAccess&) = delete;
    FilmAccess& operator=(const FilmAccess&) = delete;

    int childCount() const override { return things() + QAccessibleWidget::childCount(); }
    QAccessibleInterface* child(int index) const override {
        const plan::FilmPtr film = held();
        if (index < 0 || index >= things()) {
            return QAccessibleWidget::child(index - things());
        }
        const plan::ItemId item = film->shows[static_cast<std::size_t>(index)].item;
        auto known = things_.find(item);
        if (known == things_.end()) {
            auto* thing = new ThingAccess(film_, item);
            known = things_.emplace(item, QAccessible::registerAccessibleInterface(thing)).first;
        }
        return QAccessible::accessibleInterface(known->second);
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        if (const auto* thing = dynamic_cast<const ThingAccess*>(child)) {
            const plan::FilmPtr film = held();
            for (int n = 0; n < things(); ++n) {
                if (film->shows[static_cast<std::size_t>(n)].item == thing->item()) {
                    return n;
                }
            }
            return -1;
        }
        const int other = QAccessibleWidget::indexOfChild(child);
        return other < 0 ? other : other + things();
    }
    QAccessible::State state() const override {
        QAccessible::State state = QAccessibleWidget::state();
        state.selectable = true;
        state.selected = film_->facts().works;
        state.readOnly = film_->facts().pinned;
        return state;
    }
    QString text(QAccessible::Text kind) const override {
        if (kind == QAccessible::Description) {
            const QString line = stateLine(film_->facts()).words;
            const auto& phases = film_->facts().phases;
            return countLine(film_->facts()) +
                   (phases.empty() ? QString() : QStringLiteral("; ") + phasesWords(phases)) +
                   (line.isEmpty() ? line : QStringLiteral("; ") + line);
        }
        return QAccessibleWidget::text(kind);
    }
    QStringList actionNames() const override { return {pressAction()}; }
    void doAction(const QString& name) override {
        if (name == pressAction()) {
            film_->click();
        }
    }

  private:
    FilmButton* film_;  ///< this goes with its widget
    mutable std::map<plan::ItemId, QAccessible::Id> things_;

    [[nodiscard]] plan::FilmPtr held() const { return film_->work().plan().film(film_->film()); }
    [[nodiscard]] int things() const { return held() ? static_cast<int>(held()->shows.size()) : 0; }
};

QAccessibleInterface* made(const QString& /*type*/, QObject* object) {
    auto* film = qobject_cast<FilmButton*>(object);
    return film != nullptr ? new FilmAccess(film) : nullptr;
}

QString placed(const work::Work& work, const plan::Measure& measure) {
    if (measure.points.empty() || measure.anchor == plan::Anchor::Paper || work.grid() == nullptr) {
        return measure.points.empty() ? tr("not placed") : tr("on the paper");
    }
    const auto grid = [&work](geodesy::PlanePoint point) {
        const auto onGrid = work.grid()->onGrid(point);
        return onGrid ? text(work.grid()->gridText(*onGrid)) : tr("off the grid");
    };
    return measure.points.size() == 1
               ? grid(measure.points.front())
               : tr("from %1 to %2").arg(grid(measure.points.front()), grid(measure.points.back()));
}

}  // namespace

void bringFilmAccess() {
    QAccessible::installFactory(&made);
}

QString thingSpoken(const work::Work& work, const plan::ItemId& item) {
    if (const plan::RoutePtr route = work.plan().route(item)) {
        return text(movement::routeTitle(route->name));
    }
    const plan::MeasurePtr measure = work.plan().measure(item);
    if (!measure) {
        return {};
    }
    QString words = text(movement::label(*measure));
    words += measure->state == plan::PlaceState::Assumed    ? tr(", assumed")
             : measure->state == plan::PlaceState::Unplaced ? tr(", still to place")
                                                            : QString();
    return words + (measure->whose == plan::Whose::Enemy ? tr(", the enemy's") : QString());
}

QString thingPlaced(const work::Work& work, const plan::ItemId& item) {
    if (const plan::RoutePtr route = work.plan().route(item)) {
        return tr("Route of %1 points").arg(route->stops.size());
    }
    const plan::MeasurePtr measure = work.plan().measure(item);
    if (!measure) {
        return {};
    }
    const measures::Entry* entry = measures::find(measure->kind);
    return (entry != nullptr ? text(entry->name) : text(measure->kind)) + QStringLiteral(", ") + placed(work, *measure);
}

}  // namespace crosstick::phases
