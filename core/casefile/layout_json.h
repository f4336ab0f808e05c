#pragma once

#include <string>
#include <string_view>

#include "core/cutting/layout.h"
#include "core/cutting/split.h"

namespace drapewright::casefile {

/// Reads a layout job from JSON text (docs/layout-job.schema.json). `file` names the text in
/// errors. Unknown members are passed over, unless one looks like a known name that is missing.
/// @throws InputError with line and column, the JSON pointer of the member, and of a faulty shape
///         the point, for anything that is not a job that can be laid out
cutting::Job layout_job_from_json(std::string_view text, const std::string& file = {});

/// A layout and what it took, as it is written.
struct LayoutAnswer {
  cutting::SplitJob job;  ///< what was laid out, and where its pieces come from
  cutting::Layout layout;
  double seconds = 0;
};
/// The layout as JSON text (docs/layout.schema.json); pieces are numbered as in the job that was
/// asked for, from 0.
std::string layout_to_json(const LayoutAnswer& answer);

}  // namespace drapewright::casefile
