#include "app/desktop/window/outline_desk.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QInputDialog>
#include <array>
#include <optional>

#include "app/desktop/document/case_document.h"
#include "app/desktop/document/shape_ref.h"
#include "app/desktop/window/fault_box.h"
#include "app/desktop/window/file_desk.h"
#include "app/wording/spoken.h"
#include "core/casefile/outline_file.h"
#include "core/casefile/text_file.h"

namespace drapewright::desktop {
namespace {

using casefile::OutlineFormat;
using Outlines = std::vector<geometry::Polygon>;

QString outline_filter() {
  return spoken("Outlines (*.svg *.geojson *.wkt *.csv *.txt);;All files (*)");
}

struct Unit {
  const char* name;
  double cm;
};
constexpr std::array<Unit, 3> units{{{"mm", 0.1}, {"cm", 1}, {"inches", 2.54}}};

OutlineFormat format_of(const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  if (ending == "svg") return OutlineFormat::svg;
  if (ending == "geojson" || ending == "json") return OutlineFormat::geojson;
  if (ending == "wkt") return OutlineFormat::wkt;
  if (ending == "csv" || ending == "txt") return OutlineFormat::csv;
  throw InputError(say("the name ends in \"{1}\"", {ending.toStdString()}),
                   say(".svg, .geojson, .wkt or .csv"));
}

/// In cm; nothing when it was called off.
std::optional<double> ask_unit(QWidget& window) {
  QStringList names;
  for (const Unit& unit : units) names << unit.name;
  QInputDialog dialog(&window);
  dialog.setObjectName("unit_of_outlines");
  dialog.setWindowTitle(spoken("Unit of the outlines"));
  dialog.setLabelText(spoken("The file does not say its unit. Its lengths are in:"));
  dialog.setComboBoxItems(names);
  if (dialog.exec() != QDialog::Accepted) return std::nullopt;
  return units[static_cast<std::size_t>(names.indexOf(dialog.textValue()))].cm;
}

/// Nothing when the question for the unit was called off.
std::optional<Outlines> read(const std::string& file, QWidget& window) {
  try {
    return casefile::read_outlines(file);
  } catch (const casefile::UnitNeeded&) {
    const auto unit = ask_unit(window);
    if (!unit) return std::nullopt;
    return casefile::read_outlines(file, unit);
  }
}

Outlines outlines_in(const wound::Case& value) {
  Outlines out;
  for (const auto& wound : value.current().wounds) {
    out.push_back({.outer = wound.outline_cm, .holes = wound.islands_cm});
  }
  if (out.empty()) throw InputError(say("there is no outline yet"), say("a wound that was drawn"));
  return out;
}

}  // namespace

OutlineDesk::OutlineDesk(CaseDocument& document, const FileDesk& files, QWidget& window)
    : QObject(&window), document_(document), files_(files), window_(window) {}

void OutlineDesk::open() {
  const QString path = QFileDialog::getOpenFileName(&window_, spoken("Open outlines"),
                                                    files_.folder(), outline_filter());
  if (path.isEmpty()) return;
  try {
    add_from(path);
  } catch (const InputError& error) {
    show_fault(&window_, spoken("“{1}” holds no outline to use.", {QFileInfo(path).fileName()}),
               error, spoken("The open case is as it was."));
  }
}

void OutlineDesk::add_from(const QString& path) {
  const auto outlines = read(path.toStdString(), window_);
  if (!outlines) return;
  for (const auto& outline : *outlines) wound::check_outline(outline.outer, outline.holes, {});
  document_.edit(spoken("open outlines"), {}, [&](wound::Case& value) {
    for (const auto& outline : *outlines) {
      const ShapeRef added = add_wound(value, outline.outer);
      value.current().wounds[added.index].islands_cm = outline.holes;
    }
  });
}

void OutlineDesk::save_as() {
  QFileDialog dialog(&window_, spoken("Save the outlines as"), files_.folder(), outline_filter());
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix("svg");
  dialog.selectFile(files_.suggested_path("-outlines.svg"));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return;
  const QString path = dialog.selectedFiles().front();
  try {
    const Outlines outlines = outlines_in(document_.value());
    casefile::write_text(path.toStdString(), casefile::outlines_to(format_of(path), outlines));
  } catch (const InputError& error) {
    show_fault(&window_, spoken("“{1}” was not saved.", {QFileInfo(path).fileName()}), error,
               spoken("The file is as it was."));
  }
}

}  // namespace drapewright::desktop
