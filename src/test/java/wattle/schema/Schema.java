package wattle.schema;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.util.List;

/** A JSON schema off the class path, and what it objects to in a document. */
final class Schema {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private static final JsonSchemaFactory OURS = JsonSchemaFactory.getInstance(
      VersionFlag.V202012,
      factory -> factory.schemaMappers(
          names -> names.mappings(
              java.util.Map.of(
                  "urn:wattle:schema:findings:1", "classpath:schema/findings.schema.json",
                  "urn:wattle:schema:tables:2", "classpath:schema/tables.schema.json"))));

  private final JsonSchema schema;

  private Schema(JsonSchema schema) {
    schema.initializeValidators();
    this.schema = schema;
  }

  /** One of src/main/resources/schema. */
  static Schema ours(String name) {
    return new Schema(OURS.getSchema(SchemaLocation.of("classpath:schema/" + name + ".schema.json")));
  }

  /** SARIF 2.1.0, as OASIS published it (JSON Schema draft 7). */
  static Schema sarif() {
    JsonSchemaFactory factory = JsonSchemaFactory.getInstance(VersionFlag.V7);
    return new Schema(factory.getSchema(SchemaLocation.of("classpath:schema/sarif-schema-2.1.0.json")));
  }

  /** Objections, each with its place in the document; empty where the document meets the schema. */
  List<String> objections(JsonNode document) {
    return schema.validate(document).stream().map(Object::toString).sorted().toList();
  }

  static JsonNode read(String text) {
    try {
      return MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw new AssertionError("not JSON: " + text, e);
    }
  }
}
