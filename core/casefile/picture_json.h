#pragma once

#include "core/casefile/json_document.h"
#include "core/casefile/json_writer.h"
#include "core/picture/picture.h"

namespace drapewright::casefile {

/// The member `picture` of an assessment. Bounds are checked with the whole case.
/// @throws InputError for a missing, misspelt or wrong member, and for two references
picture::Picture picture_in(const JsonValue& value);
void write(JsonWriter& out, const picture::Picture& value);

}  // namespace drapewright::casefile
