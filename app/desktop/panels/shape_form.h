#pragma once

#include <QWidget>

#include "app/desktop/document/shape_ref.h"

class QComboBox;

namespace drapewright::desktop {

class CaseDocument;
class LimitedField;
class TextField;
class UnderminingForm;

/// What else is known of the chosen shape: a wound's name, depth, wall, undermining
/// and tunnels; a zone's kind and note.
class ShapeForm : public QWidget {
  Q_OBJECT

 public:
  explicit ShapeForm(CaseDocument& document, QWidget* parent = nullptr);

  /// Nothing is shown for islands and for what is not there.
  void set_shape(const ShapeRef& ref);
  UnderminingForm& undermining() { return *undermining_; }

 private:
  QWidget* wound_part();
  QWidget* zone_part();
  LimitedField* wound_field(std::string_view id, const QString& what, double wound::Wound::*member);
  void show_case();
  void show_wound(const wound::Wound& wound);

  CaseDocument& document_;
  ShapeRef ref_;
  TextField* id_ = nullptr;
  LimitedField* depth_ = nullptr;
  LimitedField* run_in_ = nullptr;
  UnderminingForm* undermining_ = nullptr;
  QComboBox* kind_ = nullptr;
  TextField* note_ = nullptr;
  QWidget* wound_part_;
  QWidget* zone_part_;
};

}  // namespace drapewright::desktop
