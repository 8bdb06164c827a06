package org.tallywright.takeoff;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface PieceKindRecipes extends JpaRepository<PieceKindRecipe, UUID> {}
