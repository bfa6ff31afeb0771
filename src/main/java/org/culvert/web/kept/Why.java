package org.culvert.web.kept;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** What the API takes wherever a record is taken back. */
record Why(@NotBlank @Size(max = 2000) String reason) {}
