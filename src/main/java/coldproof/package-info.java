/** coldproof: rooms in layers, imports point down only; see DEVELOPERS.md and {@code ArchitectureTest}. Holds no class of its own. */
package coldproof;
