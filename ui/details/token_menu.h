#pragma once

#include <functional>
#include <map>

#include <QMenu>

#include "ui/details/token_picture.h"

namespace crosstick::details {

/// Measures to choose from by their pictures: each row has its own engraving before its name.
class TokenMenu final : public QMenu {
    Q_OBJECT

  public:
    /// @param faces  what symbols are lettered in; null while it is not there
    TokenMenu(const QString& title, const press::Faces* faces, const look::Light& light, QWidget* parent = nullptr);
    void show(QAction* action, const measures::Entry& entry);
    /// The picture of an action; nothing for one without.
    [[nodiscard]] const drawing::Drawing* token(QAction* action);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    struct Token {
        const measures::Entry* entry;
        std::optional<drawing::Drawing> drawing;  ///< made when it is first seen
    };
    const press::Faces* faces_;
    const look::Light& light_;
    std::map<QAction*, Token> tokens_;
};

}  // namespace crosstick::details
