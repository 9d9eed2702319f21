#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

#include "ui/look/theme.h"

namespace crosstick::phases {

/// A card at the side with things that are offered, in groups, each with a check box; whoever leads takes what is to be
/// taken, all at once. Enter takes, Escape leaves it; nothing in the window stands still meanwhile.
class OfferCard final : public QScrollArea {
    Q_OBJECT

  public:
    struct Row {
        QString words;
        bool taken = true;
    };
    struct Group {
        QString title;  ///< why these are offered as they are
        std::vector<Row> rows;
    };
    struct Field {
        QString label, value;
    };
    struct Offered {
        QString title, under;
        QString deed;  ///< on the button that takes
        std::vector<Field> fields = {};
        std::vector<Group> groups = {};
    };
    struct Answer {
        QStringList fields;
        std::vector<bool> taken;  ///< the rows of all groups in their order
    };
    /// Takes an answer: nothing where it is good, else why it is not.
    using Take = std::function<std::optional<QString>(const Answer&)>;

    explicit OfferCard(QWidget* parent = nullptr);
    void setLight(look::Light light);
    void offer(Offered offered, Take take);
    void leave();
    [[nodiscard]] bool isOffering() const { return static_cast<bool>(take_); }
    [[nodiscard]] const std::vector<QCheckBox*>& boxes() const { return boxes_; }
    [[nodiscard]] const std::vector<QLineEdit*>& fields() const { return fields_; }
    [[nodiscard]] QPushButton* button() const { return button_; }
    [[nodiscard]] QString refusal() const { return refusal_ != nullptr ? refusal_->text() : QString(); }

  Q_SIGNALS:
    void changed();  ///< it offers something, or no more

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    look::Light light_ = look::Light::Day;
    Offered offered_;
    Take take_;
    QWidget* body_ = nullptr;
    std::vector<QCheckBox*> boxes_;
    std::vector<QLineEdit*> fields_;
    QPushButton* button_ = nullptr;
    QLabel* refusal_ = nullptr;

    void build();
    void addHead(QWidget* body);
    void addField(QWidget* body, const Field& field);
    void addGroup(QWidget* body, const Group& group);
    void addDeed(QWidget* body);
    [[nodiscard]] QLabel* label(const QString& words, const QColor& ink, QWidget* parent) const;
    [[nodiscard]] Answer answer() const;
    void give();
};

}  // namespace crosstick::phases
