#pragma once

#include <functional>
#include <optional>

#include <QLabel>
#include <QLineEdit>
#include <QPointer>

#include "ui/look/theme.h"

namespace crosstick::phases {

/// The name of a film, typed where the film hangs: Enter keeps it, Escape drops it. What cannot be taken is refused
/// under the field, with the reason, and the old name stays in force.
class NameField final : public QLineEdit {
    Q_OBJECT

  public:
    /// Takes a name: nothing where it is good, else why it is not.
    using Take = std::function<std::optional<QString>(const QString& name)>;

    NameField(const QString& name, Take take, const look::Light& light, QWidget* parent);
    ~NameField() override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QString refusal() const { return refusal_ != nullptr ? refusal_->text() : QString(); }

  Q_SIGNALS:
    void done();  ///< kept or dropped: the field is of no more use

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void moveEvent(QMoveEvent* event) override;

  private:
    Take take_;
    const look::Light& light_;
    QPointer<QLabel> refusal_;  ///< lies on the window, under the field: the rail is too low for it

    void refuse(const QString& why);
    void layRefusal();
};

}  // namespace crosstick::phases
