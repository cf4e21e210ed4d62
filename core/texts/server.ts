/** Which texts does server say? One row a text; {name} stands for what is filled in. */
export const serverTexts = {
  "server.archive-routes.an-archive-that-coldset-made-or":
    "an archive that Coldset made, or documents as YAML or JSON in UTF-8",
  "server.archive-routes.build-the-id-of-a-build": "build, the id of a build, or nothing",
  "server.archive-routes.for-documents-that-are-here-and": "For documents that are here and differ.",
  "server.archive-routes.for-single-documents-donor-q1-keep":
    "For single documents: donor/q1=keep-mine,build/b1=as-new",
  "server.archive-routes.is-neither-an-archive-nor-a": "{label} is neither an archive nor a text.",
  "server.archive-routes.label-take-choice-choose-and-suffix": "label; take, choice, choose and suffix where wanted",
  "server.archive-routes.name-of-the-file": "Name of the file.",
  "server.archive-routes.other-bytes": "other bytes",
  "server.archive-routes.put-behind-the-id-of-what": "Put behind the id of what comes in as new.",
  "server.archive-routes.yes-takes-it-in-left-out": "yes: takes it in. Left out: only looks.",
  "server.build-lines.null-where-the-text-can-no": "null where the text can no longer be read.",
  "server.build-lines.out-of-the-way-and-kept": "Out of the way, and kept.",
  "server.build-lines.when-the-build-or-a-document": "When the build or a document that it names was last changed.",
  "server.build-lines.where-its-twenty-questions-stand-null":
    "Where its twenty questions stand; null where its documents cannot be read together.",
  "server.build-routes.build": "build {buildId}",
  "server.build-routes.the-build-s-id-and-pdf": "The build's id and .pdf.",
  "server.create-app.a-route-of-this-server": "a route of this server",
  "server.described-api.a-path-of-this-interface": "a path of this interface",
  "server.described-api.each-key-once": "each key once",
  "server.described-api.the-query-gives-more-than-once": "The query gives {key} more than once.",
  "server.described-api.what-api-openapi-json-describes": "what /api/openapi.json describes",
  "server.document-routes.a-document": "a document",
  "server.document-schemas.1-at-first-one-more-with": "1 at first, one more with each change.",
  "server.document-schemas.an-edit-path-measured-chainstay-value":
    'an edit: {{"path": ["measured", "chainstay"], "value": 441, "revision": 3}}; a path has 1 to {pathSteps} keys, revision is the one that it was made on, and without value the key is taken out',
  "server.document-schemas.an-import-text-label-file-yaml":
    'an import: {{"text": "…", "label": "file.yaml"}}; the label may be left out',
  "server.document-schemas.given-the-edit-is-made-once":
    "Given: the edit is made once, however often it arrives under this id.",
  "server.document-schemas.it-had-arrived-before-this-is":
    "It had arrived before; this is what became of it then. The document may have moved on.",
  "server.document-schemas.it-puts-back-what-stood-there":
    "It puts back what stood there before: kept as an undo where that is so.",
  "server.document-schemas.put-in-on-the-page": "put in on the page",
  "server.event-routes.at-once": "{most} at once",
  "server.event-routes.windows-listen-already-pages-still-work":
    "{most} windows listen already. Pages still work; close one to hear changes at once here.",
  "server.failure.a-whole-request": "a whole request",
  "server.failure.that-is-a-fault-in-this":
    "That is a fault in this program, not in what you entered. Nothing was changed by it. Reference: {reference}.",
  "server.failure.the-request-ended-before-all-of": "The request ended before all of it had come in.",
  "server.guard-request.a-page-from-elsewhere-asked-for":
    "A page from elsewhere asked for this. Only the workshop's own pages may.",
  "server.guard-request.this-server-answers-on-this-machine":
    "This server answers on this machine only, under its own address.",
  "server.history-routes.another-change-came-after-the-one":
    "Another change came after the one that was seen; nothing was done.",
  "server.history-schemas.a-name-for-how-the-build": 'a name for how the build stands: {{"name": "before welding"}}',
  "server.history-schemas.a-redo-seen-may-be-given": "a redo: {{}}; seen may be given",
  "server.history-schemas.a-restore-name-before-welding-seen":
    'a restore: {{"name": "before welding"}}; seen may be given',
  "server.history-schemas.a-restore-of-one-document-revision":
    'a restore of one document: {{"revision": 3}}; expectedRevision is the one that was seen',
  "server.history-schemas.an-undo-for-the-newest-change":
    'an undo: {{}} for the newest change, {{"change": 12}} for another one; seen may be given',
  "server.history-schemas.ask-with-before-this-for-older":
    "Ask with before=this for older ones; null where there are none.",
  "server.history-schemas.given-it-is-done-once-however":
    "Given: it is done once, however often it arrives under this id.",
  "server.history-schemas.it-had-arrived-before-this-is": "It had arrived before; this is what became of it then.",
  "server.history-schemas.name-of-a-version-or-now": 'Name of a version, or "now".',
  "server.history-schemas.null-where-nothing-differed": "null where nothing differed.",
  "server.history-schemas.number-of-a-change-later-ones": "Number of a change; later ones have higher numbers.",
  "server.history-schemas.number-of-the-newest-change-that":
    "Number of the newest change that was seen: where another came after it nothing is done.",
  "server.history-schemas.only-changes-with-a-lower-number": "Only changes with a lower number.",
  "server.history-schemas.so-many-at-most-30-if": "So many at most; 30 if left out.",
  "server.history-schemas.the-change-that-would-be-put": "The change that would be put back next.",
  "server.history-schemas.the-change-that-would-be-taken": "The change that would be taken back next.",
  "server.history-schemas.undo-and-redo-the-change-that": "undo and redo: the change that they are about.",
  "server.history-schemas.values-that-differ-and-are-not": "Values that differ and are not named.",
  "server.history-schemas.what-differs-between-two-texts-of":
    "What differs between two texts of one document, value by value.",
  "server.http-server.a-request-of-http-1-1": "a request of HTTP/1.1 with a Host",
  "server.http-server.a-request-of-http-1-1-2": "a request of HTTP/1.1",
  "server.http-server.bytes-of-headers-at-most": "{headerBytes} bytes of headers at most",
  "server.http-server.chunks-without-long-extensions": "chunks without long extensions",
  "server.http-server.connections-at-once": "{connections} connections at once",
  "server.http-server.headers-within-s-the-whole-request":
    "headers within {headers} s, the whole request within {all} s",
  "server.http-server.refused-with-allowed-is": "Refused with {status}: allowed is {allowed}.",
  "server.json-body.at-most-mb-are-taken-here": "At most {maxSize} MB are taken here at once.",
  "server.json-body.json-in-utf-8": "JSON in UTF-8",
  "server.json-body.json-of-at-most-levels": "JSON of at most {jsonDepthLimit} levels",
  "server.json-body.mb-at-most": "{maxSize} MB at most",
  "server.json-body.more-than-mb": "more than {maxSize} MB",
  "server.json-body.nested-more-than-levels-deep": "nested more than {jsonDepthLimit} levels deep",
  "server.json-body.not-json": "not JSON",
  "server.json-body.not-utf-8": "not UTF-8",
  "server.json-body.the-body-is-it-must-be": "The body is {given}; it must be {allowed}.",
  "server.json-body.what-is-written-here-must-be": "What is written here must be sent as {allowed}.",
  "server.limit-request.at-most": "{headerCount} at most",
  "server.limit-request.letters-at-most": "{urlLetters} letters at most",
  "server.limit-request.requests-at-once": "{atOnce} requests at once",
  "server.limit-request.s-at-most": "{seconds} s at most",
  "server.limit-request.steps-at-most": "{pathSteps} steps at most",
  "server.limit-request.the-address-has-letters-at-most":
    "The address has {letters} letters; at most {urlLetters} are taken.",
  "server.limit-request.the-answer-was-not-there-after": "The answer was not there after {seconds} s and was given up.",
  "server.limit-request.the-path-has-steps-at-most": "The path has {steps} steps; at most {pathSteps} are taken.",
  "server.limit-request.the-request-has-headers-at-most":
    "The request has {headers} headers; at most {headerCount} are taken.",
  "server.limit-request.the-workshop-answers-at-most-try":
    "The workshop answers at most {allowed}. Try again in a moment.",
  "server.new-build-routes.a-new-build-entries-name-old":
    'a new build: {{"entries": {{"name": "Old blue", "chainstay": "44,2 cm"}}}}',
  "server.new-build-routes.each-as-a-person-writes-it":
    "Each as a person writes it; left out or ? is not measured yet. Only the name must be there.",
  "server.new-build-routes.rider-shop-bin-or-prices-of":
    "Rider, shop, bin or prices of this workshop that the build takes over, by their ids.",
  "server.of-this-workshop.this-was-meant-for-another-workshop":
    "This was meant for another workshop than the one that is served here now. Nothing was changed.",
  "server.openapi-document.a-fault-of-the-program-not": "A fault of the program, not of the request.",
  "server.openapi-document.a-page-from-elsewhere-asked": "A page from elsewhere asked.",
  "server.openapi-document.it-has-changed-meanwhile": "It has changed meanwhile.",
  "server.openapi-document.the-body-is-of-another-type": "The body is of another type.",
  "server.openapi-document.the-body-is-too-large": "The body is too large.",
  "server.openapi-document.the-host-header-names-another-server": "The Host header names another server.",
  "server.openapi-document.the-path-has-other-methods": "The path has other methods.",
  "server.openapi-document.the-records-cannot-be-reached-just":
    "The records cannot be reached just now, or the server has too much to do.",
  "server.openapi-document.the-request-is-not-what-is": "The request is not what is described here.",
  "server.openapi-document.the-workshop-s-server-on-this":
    "The workshop's server on this machine. Whatever is refused comes with all its reasons. Before any of these answers, a request may be cut off with 400, 408, 414 or 431 where it is no HTTP, too slow or too long.",
  "server.openapi-document.there-is-no-such-thing-here": "There is no such thing here.",
  "server.openapi-document.what-was-sent-can-be-read": "What was sent can be read, but not taken.",
  "server.photo-routes.a-photo": "a photo",
  "server.photo-routes.caption-takenaway-false-either-or-both":
    '{{"caption": "…", "takenAway": false}}, either or both',
  "server.photo-routes.photo": "photo {photo}",
  "server.photo-routes.place-and-caption-each-once": "place and caption, each once",
  "server.photo-routes.sandbox-default-src-none": "sandbox; default-src 'none'",
  "server.photo-routes.what-it-shows-by-the-document": "What it shows, by the document's own names; null: the whole.",
  "server.problem.and-more-like-these-mend-the": "And {more} more like these; mend the first ones and try again.",
  "server.problem.cannot-be-done-here-can": "{given} cannot be done here; {allowed} can.",
  "server.problem.there-is-no-here": "There is no {what} here.",
  "server.self-routes.name-of-the-workshop-made-with":
    "Name of the workshop, made with its records. Each answer has it in the header Coldset-Workshop; a request with another one there is turned away with 412.",
  "server.shared-schemas.a-fault-of-the-program-the":
    "A fault of the program; the reference word stands in its log, too.",
  "server.shared-schemas.a-range-around-a-number-and": "A range around a number, and what the range means.",
  "server.shared-schemas.all-reasons-at-once": "All reasons at once.",
  "server.shared-schemas.field-or-place-empty-for-the": "Field or place; empty for the whole input.",
  "server.shared-schemas.one-reason-why-a-question-is": "One reason why a question is not answered as put.",
  "server.shared-schemas.one-sentence-for-the-builder": "One sentence for the builder.",
  "server.shared-schemas.what-was-given-where-it-is": "What was given, where it is short and plain.",
  "server.sheet-routes.json-schema-2020-12-of-the": "JSON Schema 2020-12 of the input.",
  "server.sheet-routes.the-worked-example": "The worked example.",
  "server.start-server.a-free-port-from-1024-to": "a free port from 1024 to 65535, or 0 to have one chosen",
  "server.start-server.is-no-port": "{port} is no port",
  "server.start-server.port-is-taken-by-another-program":
    "Port {port} is taken by another program, perhaps by a Coldset that is already running",
  "server.start-server.port-may-not-be-used-by": "Port {port} may not be used by you",
  "server.start-server.name-another-one":
    "{reason}. Name another one with --port, or --port 0 to have a free one chosen.",
  "server.static-files.no-such-file": "There is no such file here.\n",
  "server.static-files.not-built": "The page is not built yet. Run: npm start\n",
} as const;
