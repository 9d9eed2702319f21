#include "ui/details/token_menu.h"

#include <QPaintEvent>
#include <QPainter>

#include "symbols/specimen/specimen.h"

namespace crosstick::details {
namespace {

constexpr QSize kToken{52, 30};
constexpr int kLeft = 10;

}  // namespace

TokenMenu::TokenMenu(const QString& title, const press::Faces* faces, const look::Light& light, QWidget* parent)
    : QMenu(title, parent), faces_(faces), light_(light) {
    setProperty("tokens", true);  // the style sheet leaves room for them
    setToolTipsVisible(true);
}

void TokenMenu::show(QAction* action, const measures::Entry& entry) {
    tokens_[action] = {&entry, {}};
}

const drawing::Drawing* TokenMenu::token(QAction* action) {
    const auto held = tokens_.find(action);
    if (held == tokens_.end()) {
        return nullptr;
    }
    Token& token = held->second;
    if (!token.drawing) {
        token.drawing = symbols::tokenOf(*token.entry, tokenRoom(kToken), {});
    }
    return &*token.drawing;
}

void TokenMenu::paintEvent(QPaintEvent* event) {
    QMenu::paintEvent(event);
    if (faces_ == nullptr) {
        return;
    }
    QPainter painter(this);
    for (QAction* action : actions()) {
        const QRect row = actionGeometry(action);
        const drawing::Drawing* drawing = row.intersects(event->rect()) ? token(action) : nullptr;
        if (drawing != nullptr) {
            const QPointF at(row.left() + kLeft, row.top() + (row.height() - kToken.height()) / 2.0);
            paintToken(painter, at, *drawing, *faces_, light_);
        }
    }
}

}  // namespace crosstick::details
