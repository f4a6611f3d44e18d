/**
 * YAML 1.2 read strictly into a tree that knows where everything stands. Enter at {@link coldproof.files.yaml.YamlTree#read} and walk with
 * {@link coldproof.files.yaml.YamlForm}. Every scalar stays the text that was written: {@code off}, {@code no} and {@code 017} are words.
 * May use {@code quantity} and Jackson's YAML tokens.
 */
package coldproof.files.yaml;
